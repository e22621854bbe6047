package org.vestibule.quality;

/**
 * Where a person says a grey card lies in the preview, in parts of its width and height, 0 to 1.
 * The card alone must be inside, evenly lit.
 *
 * @param left first column as a part of the width
 * @param top first row as a part of the height
 * @param right column after the last, larger than left
 * @param bottom row after the last, larger than top
 */
public record GreyCard(double left, double top, double right, double bottom) {

  /** Half the side of a spot, as a part of the picture's width and height (chosen, no source). */
  private static final double HALF_SPOT = 0.015;

  /**
   * A spot on the card, of 3 % of the picture's width and height, moved inwards at an edge.
   *
   * @param x its middle as a part of the width, 0 to 1
   * @param y its middle as a part of the height, 0 to 1
   */
  public static GreyCard spot(double x, double y) {
    double across = Math.max(HALF_SPOT, Math.min(1 - HALF_SPOT, x));
    double down = Math.max(HALF_SPOT, Math.min(1 - HALF_SPOT, y));
    return new GreyCard(across - HALF_SPOT, down - HALF_SPOT, across + HALF_SPOT, down + HALF_SPOT);
  }

  public GreyCard {
    if (!(left >= 0 && left < right && right <= 1 && top >= 0 && top < bottom && bottom <= 1)) {
      throw new IllegalArgumentException(
          "a grey card lies within 0 to 1, left before right and top before bottom, but was "
              + left
              + ", "
              + top
              + ", "
              + right
              + ", "
              + bottom);
    }
  }
}
