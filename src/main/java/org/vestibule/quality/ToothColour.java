package org.vestibule.quality;

/**
 * Whether a pixel is tooth-coloured: L* at least 50, a* -8 to 10, b* -8 to 38 (chosen around the
 * colours of natural teeth that shade guides span; no source).
 *
 * <p>A photograph asks this of some hundred thousand pixels. Cube roots come from a table, which is
 * right to a thousandth of a step; where that is too coarse to say, {@link Lab} says it.
 */
final class ToothColour {

  private static final double DARKEST = 50;
  private static final double LEAST_A = -8;
  private static final double MOST_A = 10;
  private static final double LEAST_B = -8;
  private static final double MOST_B = 38;

  /** How near a limit the table is not asked. */
  private static final double NEAR = 0.02;

  /**
   * With less light than this of X or Z the table would be coarse, and a colour that is light
   * enough is far too green or too yellow: a* at most -100, b* at least 40.
   */
  private static final double LEAST_LIGHT = 0.05;

  /** Y of L* 49.9, which is too dark. */
  private static final double TOO_DARK = 0.1833;

  private static final int STEPS = 4096;
  private static final double MOST_LIGHT = 1.1;
  private static final float[] ROOTS = new float[(int) (STEPS * MOST_LIGHT) + 2];

  /**
   * Light of the three channels' values towards X, Y and Z, as shares of white: 256 values each.
   */
  private static final double[] WEIGHTS = new double[9 << Byte.SIZE];

  static {
    for (int i = 0; i < ROOTS.length; i++) {
      ROOTS[i] = (float) Math.cbrt((double) i / STEPS);
    }
    for (int channel = 0; channel < 3; channel++) {
      for (int value = 0; value < 256; value++) {
        double[] shares = Lab.shares(channel, Lab.light(value));
        for (int axis = 0; axis < 3; axis++) {
          WEIGHTS[((3 * channel + axis) << Byte.SIZE) | value] = shares[axis];
        }
      }
    }
  }

  private ToothColour() {}

  /** True if an sRGB pixel, {@code 0xRRGGBB}, has the colour of a tooth. */
  static boolean is(int rgb) {
    int red = rgb >> 16 & 0xFF;
    int green = rgb >> 8 & 0xFF;
    int blue = rgb & 0xFF;
    if (green < 100) {
      return false;
    }
    double x = WEIGHTS[red] + WEIGHTS[3 << 8 | green] + WEIGHTS[6 << 8 | blue];
    double y = WEIGHTS[1 << 8 | red] + WEIGHTS[4 << 8 | green] + WEIGHTS[7 << 8 | blue];
    double z = WEIGHTS[2 << 8 | red] + WEIGHTS[5 << 8 | green] + WEIGHTS[8 << 8 | blue];
    if (x < LEAST_LIGHT || y < TOO_DARK || z < LEAST_LIGHT) {
      return false;
    }
    double root = root(y);
    double a = 500 * (root(x) - root);
    // Gums, lips and skin are too red.
    if (MOST_A - a < -NEAR) {
      return false;
    }
    double b = 200 * (root - root(z));
    // How far inside all limits the colour lies; negative if outside of one.
    double inside =
        Math.min(
            116 * root - 16 - DARKEST,
            Math.min(Math.min(a - LEAST_A, MOST_A - a), Math.min(b - LEAST_B, MOST_B - b)));
    return Math.abs(inside) < NEAR ? is(Lab.ofSrgb(rgb)) : inside > 0;
  }

  /** The same, slowly. */
  static boolean is(Lab colour) {
    return colour.lightness() >= DARKEST
        && colour.a() >= LEAST_A
        && colour.a() <= MOST_A
        && colour.b() >= LEAST_B
        && colour.b() <= MOST_B;
  }

  private static double root(double share) {
    double place = share * STEPS;
    int step = (int) place;
    double low = ROOTS[step];
    return low + (place - step) * (ROOTS[step + 1] - low);
  }
}
