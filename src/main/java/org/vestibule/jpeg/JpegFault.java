package org.vestibule.jpeg;

import java.util.Locale;
import org.vestibule.base.Outcome;

/** A reason, found deep inside, why a picture can't be used; the room's edge makes it a refusal. */
final class JpegFault extends Exception {

  private static final long serialVersionUID = 1L;

  private static final String TAKE_ANOTHER =
      "copy it from the phone again, or leave it out if the original is damaged too";

  private final String reason;
  private final String advice;
  private final int soundRows;

  private JpegFault(String reason, String advice, int soundRows) {
    super(reason + ": " + advice, null, false, false);
    this.soundRows = soundRows;
    this.reason = reason;
    this.advice = advice;
  }

  /** The bytes are damaged or incomplete. */
  static JpegFault damaged(String reason) {
    return new JpegFault(reason, TAKE_ANOTHER, 0);
  }

  /** The bytes are sound but of a kind this engine doesn't carry. */
  static JpegFault unsuited(String reason, String advice) {
    return new JpegFault(reason, advice, 0);
  }

  /**
   * The same fault, with what is sound in spite of it.
   *
   * @param soundRows rows of samples from the top
   * @param rows all rows of the picture
   */
  JpegFault withSoundRows(int soundRows, int rows) {
    String share =
        soundRows == 0
            ? "none of its " + rows + " rows is sound"
            : String.format(
                Locale.ROOT,
                "the first %d of its %d rows (%d %%) are sound",
                soundRows,
                rows,
                100L * soundRows / rows);
    return new JpegFault(reason + "; " + share, advice, soundRows);
  }

  /** Rows of samples, from the top, that are sound; 0 if none is or it is not known. */
  int soundRows() {
    return soundRows;
  }

  <T> Outcome<T> refusal() {
    return Outcome.refused(reason, advice);
  }
}
