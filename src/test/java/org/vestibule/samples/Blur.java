package org.vestibule.samples;

/** The mean over a square around each place, by running sums; edges repeat. */
final class Blur {

  private Blur() {}

  static float[] box(float[] values, int width, int height, int radius) {
    return down(across(values, width, height, radius), width, height, radius);
  }

  private static float[] across(float[] values, int width, int height, int radius) {
    float[] out = new float[values.length];
    for (int y = 0; y < height; y++) {
      run(values, out, y * width, 1, width, radius);
    }
    return out;
  }

  private static float[] down(float[] values, int width, int height, int radius) {
    float[] out = new float[values.length];
    for (int x = 0; x < width; x++) {
      run(values, out, x, width, height, radius);
    }
    return out;
  }

  private static void run(float[] in, float[] out, int start, int stride, int count, int radius) {
    double sum = 0;
    for (int i = -radius; i <= radius; i++) {
      sum += in[start + stride * bounded(i, count)];
    }
    for (int i = 0; i < count; i++) {
      out[start + stride * i] = (float) (sum / (2 * radius + 1));
      sum += in[start + stride * bounded(i + radius + 1, count)];
      sum -= in[start + stride * bounded(i - radius, count)];
    }
  }

  private static int bounded(int index, int count) {
    return Math.max(0, Math.min(count - 1, index));
  }
}
