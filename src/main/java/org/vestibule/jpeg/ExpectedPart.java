package org.vestibule.jpeg;

import org.jspecify.annotations.Nullable;

/**
 * Which part of the displayed picture a plan must keep, found for the proof by stepping along the
 * axes, apart from the engine's own arithmetic.
 */
final class ExpectedPart {

  private ExpectedPart() {}

  /** The part that can be kept: block starts at the near edges, the far edges as asked. */
  static @Nullable CropBox of(JpegFrame frame, TranscodePlan plan) {
    boolean swaps = plan.turn().swapsAxes();
    int width = swaps ? frame.size().height() : frame.size().width();
    int height = swaps ? frame.size().width() : frame.size().height();
    int unitWidth = swaps ? frame.unitHeight() : frame.unitWidth();
    int unitHeight = swaps ? frame.unitWidth() : frame.unitHeight();
    CropBox crop = plan.crop();
    CropBox wanted = crop == null ? new CropBox(0, 0, width, height) : crop;
    int left = firstKept(width, unitWidth, plan.turn().flipsHorizontally(), wanted.left());
    int top = firstKept(height, unitHeight, plan.turn().flipsVertically(), wanted.top());
    if (left >= wanted.right() || top >= wanted.bottom()) {
      return null;
    }
    return new CropBox(left, top, wanted.right() - left, wanted.bottom() - top);
  }

  /**
   * Steps back from the wanted sample, or forward where there is none before it, to a block start.
   */
  private static int firstKept(int length, int unit, boolean reversed, int wanted) {
    for (int at = wanted; at >= 0; at--) {
      if (isStart(length, unit, reversed, at)) {
        return at;
      }
    }
    int at = wanted;
    while (at < length && !isStart(length, unit, reversed, at)) {
      at++;
    }
    return at;
  }

  /** A reversed axis starts its blocks where the stored picture ends them. */
  private static boolean isStart(int length, int unit, boolean reversed, int at) {
    return (reversed ? length - at : at) % unit == 0;
  }
}
