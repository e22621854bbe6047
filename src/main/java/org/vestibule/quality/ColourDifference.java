package org.vestibule.quality;

/**
 * The CIEDE2000 colour difference with all weights 1 (Sharma, Wu and Dalal, Color Research and
 * Application 30 (2005) 21-30; from memory).
 */
final class ColourDifference {

  private static final double TWENTY_FIVE_TO_7 = Math.pow(25, 7);

  private ColourDifference() {}

  static double between(Lab one, Lab two) {
    double meanSeventh = Math.pow((one.chroma() + two.chroma()) / 2, 7);
    double stretch = 1.5 - 0.5 * Math.sqrt(meanSeventh / (meanSeventh + TWENTY_FIVE_TO_7));
    double a1 = stretch * one.a();
    double a2 = stretch * two.a();
    double chroma1 = Math.hypot(a1, one.b());
    double chroma2 = Math.hypot(a2, two.b());
    double hue1 = hue(a1, one.b());
    double hue2 = hue(a2, two.b());
    double turn = turn(hue1, hue2, chroma1 * chroma2);
    double lightness = two.lightness() - one.lightness();
    double chroma = chroma2 - chroma1;
    double hue = 2 * Math.sqrt(chroma1 * chroma2) * sin(turn / 2);
    double meanLightness = (one.lightness() + two.lightness()) / 2;
    double meanChroma = (chroma1 + chroma2) / 2;
    double meanHue = meanHue(hue1, hue2, chroma1 * chroma2);
    double fifty = (meanLightness - 50) * (meanLightness - 50);
    double l = lightness / (1 + 0.015 * fifty / Math.sqrt(20 + fifty));
    double c = chroma / (1 + 0.045 * meanChroma);
    double h = hue / (1 + 0.015 * meanChroma * hueWeight(meanHue));
    return Math.sqrt(l * l + c * c + h * h + rotation(meanHue, meanChroma) * c * h);
  }

  private static double hueWeight(double hue) {
    return 1
        - 0.17 * cos(hue - 30)
        + 0.24 * cos(2 * hue)
        + 0.32 * cos(3 * hue + 6)
        - 0.20 * cos(4 * hue - 63);
  }

  private static double rotation(double hue, double chroma) {
    double seventh = Math.pow(chroma, 7);
    double strength = 2 * Math.sqrt(seventh / (seventh + TWENTY_FIVE_TO_7));
    double from275 = (hue - 275) / 25;
    return -strength * sin(60 * Math.exp(-from275 * from275));
  }

  /** Hue in degrees, 0 to 360; 0 for grey. */
  private static double hue(double a, double b) {
    double degrees = Math.toDegrees(Math.atan2(b, a));
    return degrees < 0 ? degrees + 360 : degrees;
  }

  private static double turn(double hue1, double hue2, double chromas) {
    double turn = hue2 - hue1;
    if (chromas == 0) {
      return 0;
    }
    return turn > 180 ? turn - 360 : turn < -180 ? turn + 360 : turn;
  }

  private static double meanHue(double hue1, double hue2, double chromas) {
    double sum = hue1 + hue2;
    if (chromas == 0) {
      return sum;
    }
    if (Math.abs(hue1 - hue2) <= 180) {
      return sum / 2;
    }
    return sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
  }

  private static double sin(double degrees) {
    return Math.sin(Math.toRadians(degrees));
  }

  private static double cos(double degrees) {
    return Math.cos(Math.toRadians(degrees));
  }
}
