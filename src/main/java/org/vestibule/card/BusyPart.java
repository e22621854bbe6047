package org.vestibule.card;

/**
 * Where a picture is busy in both directions from sample to sample, as a small code is and little
 * else: squares of samples whose brightness bends, across and down, by a good part of its mean.
 */
final class BusyPart {

  private static final int SQUARE = 8;

  /** The least mean bend, in 1/64 of the mean brightness. */
  private static final int LEAST = 9;

  private static final int LEAST_SQUARES = 3;

  /** What is searched around busy squares. */
  private static final int MARGIN = 2 * SQUARE;

  private BusyPart() {}

  /** Left, top, right and bottom of the part around all busy squares, or nothing. */
  static int[] of(Shades shades) {
    int left = shades.width;
    int top = shades.height;
    int right = 0;
    int bottom = 0;
    int count = 0;
    for (int y = 1; y + SQUARE < shades.height; y += SQUARE) {
      for (int x = 1; x + SQUARE < shades.width; x += SQUARE) {
        if (busy(shades, x, y)) {
          count++;
          left = Math.min(left, x);
          top = Math.min(top, y);
          right = Math.max(right, x + SQUARE);
          bottom = Math.max(bottom, y + SQUARE);
        }
      }
    }
    if (count < LEAST_SQUARES) {
      return new int[0];
    }
    return new int[] {
      Math.max(0, left - MARGIN),
      Math.max(0, top - MARGIN),
      Math.min(shades.width, right + MARGIN),
      Math.min(shades.height, bottom + MARGIN)
    };
  }

  private static boolean busy(Shades shades, int left, int top) {
    byte[] samples = shades.samples;
    int width = shades.width;
    int sum = 0;
    int across = 0;
    int down = 0;
    for (int y = top; y < top + SQUARE; y++) {
      int row = y * width + left;
      int before = samples[row - 1] & 0xFF;
      int middle = samples[row] & 0xFF;
      for (int at = row; at < row + SQUARE; at++) {
        int after = samples[at + 1] & 0xFF;
        sum += middle;
        across += Math.abs(2 * middle - before - after);
        down += Math.abs(2 * middle - (samples[at - width] & 0xFF) - (samples[at + width] & 0xFF));
        before = middle;
        middle = after;
      }
    }
    return 64L * across > (long) LEAST * sum && 64L * down > (long) LEAST * sum;
  }
}
