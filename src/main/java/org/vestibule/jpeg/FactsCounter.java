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

  /** Two that are added up, because neighbours are often as bright as each other. */
  private final int[][] histograms = new int[2][256];

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

  /** Counts all patches of a plane that has a sample for each. */
  void patches(byte[] means, int stride) {
    int[] even = histograms[0];
    int[] odd = histograms[1];
    for (int row = 0; row < patchesHigh; row++) {
      int end = row * stride + patchesWide;
      int at = row * stride;
      for (; at < end - 1; at += 2) {
        even[means[at] & 0xFF]++;
        odd[means[at + 1] & 0xFF]++;
      }
      if (at < end) {
        even[means[at] & 0xFF]++;
      }
    }
  }

  /**
   * Counts a block's fine detail. The transform keeps energy, so 64 samples' squares sum to the
   * coefficients' (T.81 A.3.3).
   *
   * @param energy sum of the squares of its fine frequencies, dequantised
   */
  void detail(long energy) {
    // Sixteen steps of a root mean square over 64 samples are twice the root of their sum.
    detail[(int) Math.min(FOCUS_STEPS * LARGEST_FOCUS, 2 * Math.sqrt((double) energy))]++;
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
