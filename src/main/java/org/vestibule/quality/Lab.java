package org.vestibule.quality;

/**
 * A colour in CIELAB under D65 (CIE 15:2004; IEC 61966-2-1 for sRGB; from memory).
 *
 * @param lightness L*, 0 to 100
 * @param a green to red
 * @param b blue to yellow
 */
record Lab(double lightness, double a, double b) {

  /** White of D65, 2 degrees, as the sRGB matrix has it. */
  private static final double WHITE_X = 0.95047;

  private static final double WHITE_Z = 1.08883;
  private static final double LINEAR_BELOW = 216.0 / 24389;
  private static final double SLOPE = 24389.0 / 27;

  /** From the light of red, green and blue to X, Y and Z. */
  private static final double[][] TO_XYZ = {
    {0.4124564, 0.3575761, 0.1804375},
    {0.2126729, 0.7151522, 0.0721750},
    {0.0193339, 0.1191920, 0.9503041}
  };

  private static final double[] LIGHT = new double[256];

  static {
    for (int i = 0; i < 256; i++) {
      LIGHT[i] = light(i);
    }
  }

  /** The colour of an sRGB pixel, {@code 0xRRGGBB}. */
  static Lab ofSrgb(int rgb) {
    return ofLight(LIGHT[rgb >> 16 & 0xFF], LIGHT[rgb >> 8 & 0xFF], LIGHT[rgb & 0xFF]);
  }

  /** The light that an sRGB value stands for, 0 to 1; values between the steps are allowed. */
  static double light(double value) {
    double share = value / 255;
    return share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
  }

  /** The colour of amounts of light, 0 to 1, of the sRGB primaries. */
  static Lab ofLight(double red, double green, double blue) {
    double x = TO_XYZ[0][0] * red + TO_XYZ[0][1] * green + TO_XYZ[0][2] * blue;
    double y = TO_XYZ[1][0] * red + TO_XYZ[1][1] * green + TO_XYZ[1][2] * blue;
    double z = TO_XYZ[2][0] * red + TO_XYZ[2][1] * green + TO_XYZ[2][2] * blue;
    double fx = compressed(x / WHITE_X);
    double fy = compressed(y);
    double fz = compressed(z / WHITE_Z);
    return new Lab(116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz));
  }

  /**
   * What light of one sRGB primary adds to X, Y and Z, as shares of white.
   *
   * @param channel 0 red, 1 green, 2 blue
   */
  static double[] shares(int channel, double light) {
    return new double[] {
      TO_XYZ[0][channel] * light / WHITE_X,
      TO_XYZ[1][channel] * light,
      TO_XYZ[2][channel] * light / WHITE_Z
    };
  }

  private static double compressed(double share) {
    return share > LINEAR_BELOW ? Math.cbrt(share) : (SLOPE * share + 16) / 116;
  }

  /** C*, the distance from grey. */
  double chroma() {
    return Math.hypot(a, b);
  }
}
