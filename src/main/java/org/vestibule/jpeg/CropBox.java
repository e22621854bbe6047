package org.vestibule.jpeg;

/**
 * A rectangle in samples of the displayed (turned) picture, its origin at the top left.
 *
 * @param left first column, 0 or more
 * @param top first row, 0 or more
 * @param width columns, 1 or more
 * @param height rows, 1 or more
 */
public record CropBox(int left, int top, int width, int height) {

  private static final int LARGEST = 65535;

  public CropBox {
    if (left < 0 || top < 0 || width < 1 || height < 1) {
      throw new IllegalArgumentException(
          "a crop starts at 0 or more and is at least 1 x 1 but was "
              + width
              + " x "
              + height
              + " at "
              + left
              + ", "
              + top);
    }
    if (left > LARGEST || top > LARGEST || width > LARGEST || height > LARGEST) {
      throw new IllegalArgumentException("a crop's numbers are at most " + LARGEST);
    }
  }

  /** One past the last column. */
  public int right() {
    return left + width;
  }

  /** One past the last row. */
  public int bottom() {
    return top + height;
  }

  /** Size and place for a message. */
  String words() {
    return width + " x " + height + " at " + left + ", " + top;
  }
}
