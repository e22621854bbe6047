package org.vestibule.card;

/**
 * A code that was read.
 *
 * @param text its text
 * @param topLeft centre of the mark at its top left
 * @param topRight centre of the mark at its top right
 * @param bottomLeft centre of the mark at its bottom left
 * @param side modules along its edge
 */
record CodeRead(String text, Point topLeft, Point topRight, Point bottomLeft, int side) {

  /** A place in samples. */
  record Point(float x, float y) {}

  /** The same in a picture that is larger by a factor and begins elsewhere. */
  CodeRead placed(float factor, float left, float top) {
    return new CodeRead(
        text,
        placed(topLeft, factor, left, top),
        placed(topRight, factor, left, top),
        placed(bottomLeft, factor, left, top),
        side);
  }

  private static Point placed(Point at, float factor, float left, float top) {
    return new Point(left + at.x * factor, top + at.y * factor);
  }

  /** True if the picture shows the code as its mirror image. */
  boolean mirrored() {
    float cross =
        (topRight.x - topLeft.x) * (bottomLeft.y - topLeft.y)
            - (topRight.y - topLeft.y) * (bottomLeft.x - topLeft.x);
    return cross < 0;
  }

  /**
   * True if a mark lies in this code or where its twin on the same card must be; with room for the
   * slant of a card, which moves the twin.
   */
  boolean owns(Finder finder) {
    float[] at = inModules(finder.x(), finder.y());
    float room = 0.35f * side;
    boolean down = at[1] > -room && at[1] < side + room;
    boolean own = at[0] > -room / 2 && at[0] < side + room / 2;
    float twin = CardLayout.TWIN_SHIFT * side;
    boolean other = at[0] > twin - room && at[0] < twin + side + room;
    return down && (own || other);
  }

  /** A place in modules from the code's top left corner. */
  private float[] inModules(float x, float y) {
    float modules = side - 7;
    float acrossX = (topRight.x - topLeft.x) / modules;
    float acrossY = (topRight.y - topLeft.y) / modules;
    float downX = (bottomLeft.x - topLeft.x) / modules;
    float downY = (bottomLeft.y - topLeft.y) / modules;
    float area = acrossX * downY - acrossY * downX;
    float dx = x - topLeft.x;
    float dy = y - topLeft.y;
    return new float[] {
      3.5f + (dx * downY - dy * downX) / area, 3.5f + (dy * acrossX - dx * acrossY) / area
    };
  }
}
