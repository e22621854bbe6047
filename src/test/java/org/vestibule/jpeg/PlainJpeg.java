package org.vestibule.jpeg;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * A picture's coefficients as plain arrays, for the reference coder and decoder.
 *
 * @param width in samples
 * @param height in samples
 * @param parts the components
 */
record PlainJpeg(int width, int height, List<Part> parts) {

  /** A component: its factors, its steps in zigzag order, and its blocks by row and column. */
  record Part(int horizontal, int vertical, int[] steps, int[][][] blocks) {}

  /** Blocks that hold samples, along an axis (T.81 A.1.1, A.2.2). */
  static int blocks(int samples, int factor, int largest, boolean single) {
    int own = single ? samples : (samples * factor + largest - 1) / largest;
    return (own + 7) / 8;
  }

  int largest(boolean vertical) {
    return parts.stream().mapToInt(p -> vertical ? p.vertical() : p.horizontal()).max().orElse(1);
  }

  /** Sparse blocks of every kind: empty, full to the last place, long runs, large values. */
  static PlainJpeg random(int width, int height, int[][] factors, Random random) {
    int largestAcross = 1;
    int largestDown = 1;
    for (int[] factor : factors) {
      largestAcross = Math.max(largestAcross, factor[0]);
      largestDown = Math.max(largestDown, factor[1]);
    }
    List<Part> parts = new ArrayList<>();
    for (int[] factor : factors) {
      boolean single = factors.length == 1;
      int wide = blocks(width, factor[0], largestAcross, single);
      int high = blocks(height, factor[1], largestDown, single);
      int[] steps = new int[64];
      for (int i = 0; i < 64; i++) {
        steps[i] = 1 + random.nextInt(255);
      }
      int[][][] blocks = new int[high][wide][64];
      for (int[][] row : blocks) {
        for (int[] block : row) {
          fill(block, random);
        }
      }
      parts.add(new Part(factor[0], factor[1], steps, blocks));
    }
    return new PlainJpeg(width, height, parts);
  }

  private static void fill(int[] block, Random random) {
    block[0] = random.nextInt(2047) - 1023;
    int chance = random.nextInt(5);
    for (int k = 1; k < 64; k++) {
      if (chance > 0 && random.nextInt(chance * chance) == 0) {
        int bits = random.nextInt(6) == 0 ? 10 : 1 + random.nextInt(4);
        block[k] = random.nextInt(1 << bits) - (1 << (bits - 1));
      }
    }
    if (random.nextInt(4) == 0) {
      block[63] = random.nextBoolean() ? 1023 : -1023;
    }
  }
}
