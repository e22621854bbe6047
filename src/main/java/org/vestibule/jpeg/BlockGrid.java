package org.vestibule.jpeg;

/**
 * How many 8x8 blocks one component has (ITU-T T.81 A.1.1, A.2.4).
 *
 * @param wide blocks that hold picture samples, across
 * @param high blocks that hold picture samples, down
 * @param stride blocks across with the padding that interleaved scans carry
 * @param rows blocks down with that padding
 */
record BlockGrid(int wide, int high, int stride, int rows) {

  static BlockGrid of(JpegFrame frame, JpegComponent component) {
    if (frame.components().size() == 1) {
      int wide = ceil(frame.size().width(), 8);
      int high = ceil(frame.size().height(), 8);
      return new BlockGrid(wide, high, wide, high);
    }
    int samplesWide = ceil(frame.size().width() * component.horizontal(), frame.maxHorizontal());
    int samplesHigh = ceil(frame.size().height() * component.vertical(), frame.maxVertical());
    return new BlockGrid(
        ceil(samplesWide, 8),
        ceil(samplesHigh, 8),
        unitsWide(frame) * component.horizontal(),
        unitsHigh(frame) * component.vertical());
  }

  /** MCUs across in an interleaved scan. */
  static int unitsWide(JpegFrame frame) {
    return ceil(frame.size().width(), frame.unitWidth());
  }

  /** MCUs down in an interleaved scan. */
  static int unitsHigh(JpegFrame frame) {
    return ceil(frame.size().height(), frame.unitHeight());
  }

  /** Blocks with padding. */
  long allocated() {
    return (long) stride * rows;
  }

  private static int ceil(int dividend, int divisor) {
    return (dividend + divisor - 1) / divisor;
  }
}
