package org.vestibule.jpeg;

/**
 * The inverse DCT of a block's lowest frequencies: as few samples as a reduced picture needs, each
 * the mean of what it stands for (ITU-T T.81 A.3.3 with N points in place of eight).
 */
final class ReducedInverse {

  private static final float[][] COSINES = new float[9][];

  static {
    for (int points = 1; points <= 8; points++) {
      COSINES[points] = cosines(points);
    }
  }

  private final int across;
  private final int down;
  private final float[] horizontal;
  private final float[] vertical;

  /** Dequantised coefficients, row by row. */
  private final float[] input = new float[64];

  private final float[] half = new float[64];

  /**
   * For blocks of this many samples.
   *
   * @param across 1 to 8
   * @param down 1 to 8
   */
  ReducedInverse(int across, int down) {
    this.across = across;
    this.down = down;
    this.horizontal = COSINES[across];
    this.vertical = COSINES[down];
  }

  /** Weight of frequency u at sample x, at index {@code x * points + u}. */
  private static float[] cosines(int points) {
    float[] weights = new float[points * points];
    double scale = Math.sqrt(points / 8.0);
    for (int x = 0; x < points; x++) {
      for (int u = 0; u < points; u++) {
        double norm = Math.sqrt((u == 0 ? 1.0 : 2.0) / points);
        weights[x * points + u] =
            (float) (scale * norm * Math.cos((2 * x + 1) * u * Math.PI / (2 * points)));
      }
    }
    return weights;
  }

  /** The last zigzag position that matters. */
  int lastPosition() {
    int last = 0;
    for (int v = 0; v < down; v++) {
      for (int u = 0; u < across; u++) {
        last = Math.max(last, Zigzag.position(v, u));
      }
    }
    return last;
  }

  /** With at most two samples along an edge every weight is an eighth. */
  private void inIntegers(int[] values, byte[] plane, int at, int stride) {
    for (int y = 0; y < down; y++) {
      for (int x = 0; x < across; x++) {
        int sum = values[0] + 4;
        if (across == 2) {
          sum += x == 0 ? values[1] : -values[1];
        }
        if (down == 2) {
          sum += y == 0 ? values[2] : -values[2];
        }
        if (across == 2 && down == 2) {
          sum += x == y ? values[4] : -values[4];
        }
        plane[at + y * stride + x] = (byte) Math.max(0, Math.min(255, (sum >> 3) + 128));
      }
    }
  }

  /**
   * Writes one block's samples, 0 to 255, into a plane.
   *
   * @param values dequantised coefficients in zigzag order
   */
  void block(int[] values, byte[] plane, int at, int stride) {
    if (across <= 2 && down <= 2) {
      inIntegers(values, plane, at, stride);
      return;
    }
    for (int v = 0; v < down; v++) {
      for (int u = 0; u < across; u++) {
        input[v * across + u] = values[Zigzag.position(v, u)];
      }
    }
    for (int v = 0; v < down; v++) {
      for (int x = 0; x < across; x++) {
        float sum = 0;
        for (int u = 0; u < across; u++) {
          sum += horizontal[x * across + u] * input[v * across + u];
        }
        half[v * across + x] = sum;
      }
    }
    for (int y = 0; y < down; y++) {
      for (int x = 0; x < across; x++) {
        float sum = 128.5f;
        for (int v = 0; v < down; v++) {
          sum += vertical[y * down + v] * half[v * across + x];
        }
        plane[at + y * stride + x] = (byte) Math.max(0, Math.min(255, (int) Math.floor(sum)));
      }
    }
  }
}
