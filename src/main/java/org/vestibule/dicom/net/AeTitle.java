package org.vestibule.dicom.net;

import org.vestibule.base.Outcome;

/** The name of an application entity: 1 to 16 characters (PS3.5 6.2, AE), without outer spaces. */
public record AeTitle(String value) {

  static final int MOST = 16;

  /**
   * Refuses a name that {@link #read} would refuse.
   *
   * @throws IllegalArgumentException with its words
   */
  public AeTitle {
    if (of(value) instanceof Outcome.Refused<String> refused) {
      throw new IllegalArgumentException(refused.sentence());
    }
  }

  /** The title in these letters, or what is wrong with them. */
  public static Outcome<AeTitle> read(String text) {
    return of(text.strip()).map(AeTitle::new);
  }

  private static Outcome<String> of(String text) {
    boolean plain = text.chars().allMatch(c -> c >= ' ' && c <= '~' && c != '\\');
    if (text.isBlank() || text.length() > MOST || !plain || !text.equals(text.strip())) {
      return Outcome.refused(
          "an application entity title has 1 to "
              + MOST
              + " letters, digits or signs without accents and without a backslash",
          "write the title as the archive's administrator gave it");
    }
    return Outcome.done(text);
  }

  @Override
  public String toString() {
    return value;
  }
}
