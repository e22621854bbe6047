package org.vestibule.dicom;

/**
 * What names this program in the file meta information (PS3.10 7.1, PS3.7 D.3.3.2).
 *
 * <p>The class UID must be one that nobody else uses. The project owns no registered root, and
 * borrowing somebody's would be wrong, so it is a UUID under 2.25 (PS3.5 B.2), drawn once and fixed
 * here. The standard advises against such UIDs for what is settled when software is designed; it
 * doesn't forbid them, and uniqueness and form are kept. With a root of its own the project changes
 * this one constant.
 */
public final class Implementation {

  public static final String CLASS_UID = "2.25.201832498376928028459054381905273480583";

  /** At most 16 characters. */
  public static final String VERSION_NAME = "VESTIBULE_0_1";

  private Implementation() {}
}
