package org.vestibule.card;

import org.vestibule.jpeg.GrayRaster;

/**
 * A small picture and, for each of its samples, how much brighter it is than its surroundings:
 * below 0 it counts as dark. The surroundings are a square around it, so that shade and lamps do
 * not matter.
 */
final class Shades {

  /** Half the side of the surroundings, in samples. */
  private static final int AROUND = 22;

  private static final int SIDE = 2 * AROUND + 1;

  /** A sample counts as dark if it is darker than this many 1/64 of the mean around it. */
  private static final int DARKER = 60;

  /** Parts of a sample's step. */
  static final int PARTS = 16;

  /** What a mean is multiplied by to become a threshold. */
  private static final long SCALE = PARTS * DARKER / 64;

  /**
   * A division by the size of the surroundings is a multiplication by its reciprocal: exact, since
   * dividend times divisor stay below 2 to this power (255 x 45^4 x 15).
   */
  private static final int RECIPROCAL_BITS = 36;

  final int width;
  final int height;

  /** Sample minus threshold in 1/16, row by row. */
  final short[] above;

  /** Each byte unsigned, row by row; nobody writes into it. */
  final byte[] samples;

  /** Of the row at hand: the sum of the columns' sums left of each place. */
  private final int[] upTo;

  private Shades(int width, int height, byte[] samples) {
    this.width = width;
    this.height = height;
    this.samples = samples;
    this.above = new short[samples.length];
    this.upTo = new int[width + 1];
    compare();
  }

  static Shades of(GrayRaster picture) {
    return new Shades(picture.width(), picture.height(), picture.samples());
  }

  /** The same picture at half the size. */
  Shades halved() {
    int wide = Math.max(1, width / 2);
    int high = Math.max(1, height / 2);
    byte[] half = new byte[wide * high];
    // Only what is one sample wide or high has no second one.
    int beside = width > 1 ? 1 : 0;
    int below = height > 1 ? width : 0;
    for (int y = 0; y < high; y++) {
      int at = 2 * y * width;
      for (int to = y * wide; to < (y + 1) * wide; to++) {
        int sum =
            (samples[at] & 0xFF)
                + (samples[at + beside] & 0xFF)
                + (samples[at + below] & 0xFF)
                + (samples[at + below + beside] & 0xFF);
        half[to] = (byte) ((sum + 2) >> 2);
        at += 2;
      }
    }
    return new Shades(wide, high, half);
  }

  /** A sample, 0 to 255; beyond the edge that of the edge. */
  int sample(int x, int y) {
    int column = Math.max(0, Math.min(width - 1, x));
    int row = Math.max(0, Math.min(height - 1, y));
    return samples[row * width + column] & 0xFF;
  }

  /** A sample within the picture, 0 to 255. */
  int at(int x, int y) {
    return samples[y * width + x] & 0xFF;
  }

  /** How far a place is above its threshold, in 1/16, between samples interpolated. */
  float above(float x, float y) {
    int left = (int) x;
    int top = (int) y;
    if (x < 0 || y < 0 || left >= width - 1 || top >= height - 1) {
      return Float.NaN;
    }
    float across = x - left;
    float down = y - top;
    int at = top * width + left;
    float upper = above[at] + across * (above[at + 1] - above[at]);
    float lower = above[at + width] + across * (above[at + width + 1] - above[at + width]);
    return upper + down * (lower - upper);
  }

  /** Sums along rows and columns slide over the picture, so that each sample costs the same. */
  private void compare() {
    int[] columns = new int[width];
    for (int y = 0; y < Math.min(AROUND, height); y++) {
      add(columns, y, 1);
    }
    for (int y = 0; y < height; y++) {
      boolean comes = y + AROUND < height;
      boolean goes = y - AROUND - 1 >= 0;
      if (comes && goes) {
        slide(columns, (y - AROUND - 1) * width, (y + AROUND) * width);
      } else if (comes) {
        add(columns, y + AROUND, 1);
      } else if (goes) {
        add(columns, y - AROUND - 1, -1);
      }
      int rows = Math.min(height - 1, y + AROUND) - Math.max(0, y - AROUND) + 1;
      compareRow(columns, y, rows);
    }
  }

  private void compareRow(int[] columns, int y, int rows) {
    int[] sums = upTo;
    int sumSoFar = 0;
    for (int x = 0; x < width; x++) {
      sumSoFar += columns[x];
      sums[x + 1] = sumSoFar;
    }
    int inner = Math.min(AROUND, width);
    int outer = Math.max(inner, width - AROUND);
    for (int x = 0; x < inner; x++) {
      compare(x, y, rows);
    }
    // Between the edges the surroundings are all of one size.
    long reciprocal = reciprocal(SIDE * rows);
    int base = y * width;
    for (int x = inner; x < outer; x++) {
      int sum = sums[x + AROUND + 1] - sums[x - AROUND];
      int threshold = (int) ((sum * SCALE * reciprocal) >> RECIPROCAL_BITS);
      above[base + x] = (short) ((samples[base + x] & 0xFF) * PARTS - threshold);
    }
    for (int x = outer; x < width; x++) {
      compare(x, y, rows);
    }
  }

  /** A sample near an edge. */
  private void compare(int x, int y, int rows) {
    int from = Math.max(0, x - AROUND);
    int to = Math.min(width, x + AROUND + 1);
    int sum = upTo[to] - upTo[from];
    int threshold = (int) ((sum * SCALE * reciprocal((to - from) * rows)) >> RECIPROCAL_BITS);
    above[y * width + x] = (short) ((samples[y * width + x] & 0xFF) * PARTS - threshold);
  }

  private static long reciprocal(int of) {
    return (1L << RECIPROCAL_BITS) / of + 1;
  }

  private void slide(int[] columns, int goes, int comes) {
    for (int x = 0; x < width; x++) {
      columns[x] += (samples[comes + x] & 0xFF) - (samples[goes + x] & 0xFF);
    }
  }

  private void add(int[] columns, int y, int sign) {
    int row = y * width;
    for (int x = 0; x < width; x++) {
      columns[x] += sign * (samples[row + x] & 0xFF);
    }
  }
}
