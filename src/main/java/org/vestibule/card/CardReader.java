package org.vestibule.card;

import org.vestibule.base.Outcome;
import org.vestibule.jpeg.FirstLook;

/**
 * Looks for a card in a photograph. At an eighth of its size it searches for the corner marks of a
 * code, which costs little; only where there are any does it look closer, and only there.
 */
public final class CardReader {

  private CardReader() {}

  /** Nothing is shown to anyone. */
  private static final int NO_PREVIEW = 1;

  /**
   * Looks for a card in a JPEG file's first picture. How Exif says it must be turned does not
   * matter.
   *
   * @return refused if the picture itself can't be decoded
   */
  public static Outcome<CardSighting> read(byte[] jpeg) {
    return FirstLook.use(jpeg, NO_PREVIEW, Suspicion::of).then(seen -> seen.settled(jpeg));
  }
}
