package org.vestibule.quality;

import org.vestibule.jpeg.Raster;

/**
 * What lies in the place of a grey card.
 *
 * @param colour its mean colour, of the mean light
 * @param darkest smallest value of any channel, 0 to 255
 * @param brightest largest value of any channel, 0 to 255
 * @param unevenness how much its colours differ: root of the summed variances of L*, a* and b*
 */
record GreyPatch(Lab colour, int darkest, int brightest, double unevenness) {

  static GreyPatch of(Raster preview, GreyCard card) {
    int left = (int) (card.left() * preview.width());
    int top = (int) (card.top() * preview.height());
    int right = Math.max(left + 1, (int) (card.right() * preview.width()));
    int bottom = Math.max(top + 1, (int) (card.bottom() * preview.height()));
    double[] light = new double[3];
    double[] sums = new double[3];
    double squares = 0;
    int darkest = 255;
    int brightest = 0;
    int count = (right - left) * (bottom - top);
    for (int y = top; y < bottom; y++) {
      for (int x = left; x < right; x++) {
        int rgb = preview.pixel(x, y);
        for (int channel = 0; channel < 3; channel++) {
          int value = rgb >> (16 - 8 * channel) & 0xFF;
          light[channel] += Lab.light(value);
          darkest = Math.min(darkest, value);
          brightest = Math.max(brightest, value);
        }
        Lab own = Lab.ofSrgb(rgb);
        sums[0] += own.lightness();
        sums[1] += own.a();
        sums[2] += own.b();
        squares += own.lightness() * own.lightness() + own.a() * own.a() + own.b() * own.b();
      }
    }
    double means = (sums[0] * sums[0] + sums[1] * sums[1] + sums[2] * sums[2]) / count / count;
    return new GreyPatch(
        Lab.ofLight(light[0] / count, light[1] / count, light[2] / count),
        darkest,
        brightest,
        Math.sqrt(Math.max(0, squares / count - means)));
  }

  /** CIEDE2000 difference from a grey of the same lightness. */
  double cast() {
    return ColourDifference.between(colour, new Lab(colour.lightness(), 0, 0));
  }

  /** Where the colour goes, in words. */
  String direction() {
    String warm = colour.b() > 0 ? "yellow" : "blue";
    String red = colour.a() > 0 ? "red" : "green";
    if (Math.abs(colour.a()) < Math.abs(colour.b()) / 2) {
      return warm;
    }
    return Math.abs(colour.b()) < Math.abs(colour.a()) / 2 ? red : red + " and " + warm;
  }
}
