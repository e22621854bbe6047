package org.vestibule.intake;

/** Reads out the Exif Flash value (CIPA DC-008 tag 0x9209, bits from memory). */
public final class FlashWords {

  private static final int FIRED = 1;
  private static final int NO_FUNCTION = 1 << 5;
  private static final int RED_EYE = 1 << 6;

  private FlashWords() {}

  /** The value in words, for example {@code fired, switched on}. */
  public static String of(int flash) {
    if ((flash & NO_FUNCTION) != 0) {
      return "the camera has no flash";
    }
    StringBuilder words = new StringBuilder((flash & FIRED) != 0 ? "fired" : "did not fire");
    words.append(
        switch (flash >> 3 & 3) {
          case 1 -> ", switched on";
          case 2 -> ", switched off";
          case 3 -> ", automatic";
          default -> "";
        });
    words.append(
        switch (flash >> 1 & 3) {
          case 2 -> ", no return light seen";
          case 3 -> ", return light seen";
          default -> "";
        });
    if ((flash & RED_EYE) != 0) {
      words.append(", red-eye reduction");
    }
    return words.toString();
  }
}
