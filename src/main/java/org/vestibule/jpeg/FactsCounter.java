package org.vestibule.jpeg;

import java.util.Arrays;

/** Counts what {@link PictureFacts} are made of, patch by patch and block by block. */
final class FactsCounter {

  /** Frequencies that sum to 3 to 6 stand at these zigzag positions (T.81 Figure A.6). */
  static final int FIRST_FINE = 6;

  static final int LAST_FINE = 27;

  private static final int DARK = 2;
  private static final int BRIGHT = 253;
  private static final double SHARP_SHARE = 0.9;

  /** Steps of the focus measure for one step of brightness, and its largest value. */
  private static final int FOCUS_STEPS = 16;

  private static final int LARGEST_FOCUS = 256;

  private final int patchesWide;
  private final int patchesHigh;

  /** Four that are added up, because neighbours are often as bright as each other. */
  private final int[][] histograms = new int[4][256];

  private final int[] detail = new int[FOCUS_STEPS * LARGEST_FOCUS + 1];

  /** For the brightness component of a frame. */
  FactsCounter(JpegFrame frame, JpegComponent component) {
    this.patchesWide = (samples(frame, component, false) + 3) / 4;
    this.patchesHigh = (samples(frame, component, true) + 3) / 4;
  }

  /** Samples of the component along an axis of the stored picture (T.81 A.1.1). */
  private static int samples(JpegFrame frame, JpegComponent component, boolean vertical) {
    int length = vertical ? frame.size().height() : frame.size().width();
    if (frame.components().size() == 1) {
      return length;
    }
    int factor = vertical ? component.vertical() : component.horizontal();
    int most = vertical ? frame.maxVertical() : frame.maxHorizontal();
    return (length * factor + most - 1) / most;
  }

  /** Counts a patch of 4 x 4 samples, unless it lies beyond the picture. */
  void patch(int row, int column, byte mean) {
    if (column < patchesWide && row < patchesHigh) {
      histograms[0][mean & 0xFF]++;
    }
  }

  /** Counts the four patches of a block, which start at this place of their plane. */
  void patches(int blockRow, int blockColumn, byte[] means, int at, int stride) {
    if (2 * blockColumn + 1 < patchesWide && 2 * blockRow + 1 < patchesHigh) {
      histograms[0][means[at] & 0xFF]++;
      histograms[1][means[at + 1] & 0xFF]++;
      histograms[2][means[at + stride] & 0xFF]++;
      histograms[3][means[at + stride + 1] & 0xFF]++;
      return;
    }
    for (int i = 0; i < 4; i++) {
      int y = i >> 1;
      int x = i & 1;
      patch(2 * blockRow + y, 2 * blockColumn + x, means[at + y * stride + x]);
    }
  }

  /**
   * Counts a block's fine detail. The transform keeps energy, so 64 samples' squares sum to the
   * coefficients' (T.81 A.3.3).
   *
   * @param energy sum of the squares of its fine frequencies, dequantised
   */
  void detail(long energy) {
    detail[
        (int)
            Math.min(
                (long) FOCUS_STEPS * LARGEST_FOCUS,
                (long) (Math.sqrt(energy / 64.0) * FOCUS_STEPS))]++;
  }

  PictureFacts facts() {
    int[] histogram = new int[256];
    for (int[] part : histograms) {
      Arrays.setAll(histogram, level -> histogram[level] + part[level]);
    }
    long patches = Arrays.stream(histogram).asLongStream().sum();
    long dark = Arrays.stream(histogram, 0, DARK + 1).asLongStream().sum();
    long bright = Arrays.stream(histogram, BRIGHT, 256).asLongStream().sum();
    return new PictureFacts(
        Arrays.stream(histogram).boxed().toList(),
        (double) dark / patches,
        (double) bright / patches,
        focus());
  }

  private double focus() {
    long blocks = Arrays.stream(detail).asLongStream().sum();
    long below = 0;
    int step = 0;
    while (below + detail[step] <= SHARP_SHARE * blocks) {
      below += detail[step++];
    }
    return (double) step / FOCUS_STEPS;
  }
}
