package org.vestibule.jpeg;

/**
 * At how many samples to a block a component is taken for a preview, and how pixels find theirs. A
 * coarser component is reduced less, so that its blocks cover as many pixels.
 *
 * @param across samples of a block across, 1 to 8
 * @param down samples of a block down, 1 to 8
 * @param columns the sample of a pixel stands at {@code columns / columnsOf} of its place
 * @param columnsOf its divisor
 * @param rows the same down
 * @param rowsOf its divisor
 */
record PreviewScale(int across, int down, int columns, int columnsOf, int rows, int rowsOf) {

  private static final int BLOCK = 8;

  /**
   * For a component of a frame as shown.
   *
   * @param eighths samples of a block of the finest component: the scale of the preview in eighths
   */
  static PreviewScale of(JpegFrame frame, JpegComponent component, int eighths) {
    boolean single = frame.components().size() == 1;
    int horizontal = single ? 1 : component.horizontal();
    int vertical = single ? 1 : component.vertical();
    int maxHorizontal = single ? 1 : frame.maxHorizontal();
    int maxVertical = single ? 1 : frame.maxVertical();
    int across = Math.min(BLOCK, eighths * maxHorizontal / horizontal);
    int down = Math.min(BLOCK, eighths * maxVertical / vertical);
    return new PreviewScale(
        across,
        down,
        across * horizontal,
        eighths * maxHorizontal,
        down * vertical,
        eighths * maxVertical);
  }
}
