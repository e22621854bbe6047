package org.vestibule.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Colours and their differences against published values. */
class ColourTest {

  /**
   * Pairs of Sharma, Wu and Dalal 2005, table 1; the first two as handed on, the rest from memory.
   */
  @ParameterizedTest
  @CsvSource({
    "50, 2.6772, -79.7751, 50, 0, -82.7485, 2.0425",
    "50, 3.1571, -77.2803, 50, 0, -82.7485, 2.8615",
    "50, 0, 0, 50, -1, 2, 2.3669",
    "50, 2.49, -0.001, 50, -2.49, 0.0009, 7.1792",
    "50, 2.49, -0.001, 50, -2.49, 0.0011, 7.2195",
    "50, 2.5, 0, 73, 25, -18, 27.1492",
    "60.2574, -34.0099, 36.2677, 60.4626, -34.1751, 39.4387, 1.2644",
    "22.7233, 20.0904, -46.694, 23.0331, 14.973, -42.5619, 2.0373",
    "2.0776, 0.0795, -1.135, 0.9033, -0.0636, -0.5514, 0.9082"
  })
  void differencesAreThePublishedOnes(
      double l1, double a1, double b1, double l2, double a2, double b2, double difference) {
    Lab one = new Lab(l1, a1, b1);
    Lab two = new Lab(l2, a2, b2);
    assertThat(ColourDifference.between(one, two)).isCloseTo(difference, within(5e-5));
    assertThat(ColourDifference.between(two, one)).isCloseTo(difference, within(5e-5));
    assertThat(ColourDifference.between(one, one)).isZero();
  }

  /** Handbook values of the sRGB primaries under D65. */
  @ParameterizedTest
  @CsvSource({
    "0xFF0000, 53.24, 80.09, 67.20",
    "0x0000FF, 32.30, 79.19, -107.86",
    "0xFFFFFF, 100, 0, 0",
    "0x000000, 0, 0, 0"
  })
  void primariesHaveTheirHandbookColours(String rgb, double lightness, double a, double b) {
    Lab colour = Lab.ofSrgb(Integer.decode(rgb));
    assertThat(colour.lightness()).isCloseTo(lightness, within(0.006));
    assertThat(colour.a()).isCloseTo(a, within(0.02));
    assertThat(colour.b()).isCloseTo(b, within(0.02));
  }

  /** L* 116 * cbrt(0.18) - 16 = 49.50; the nearest step of sRGB is 118. */
  @Test
  void greyOf18PercentIsWhereItBelongs() {
    assertThat(Lab.ofLight(0.18, 0.18, 0.18).lightness()).isCloseTo(49.50, within(0.005));
    assertThat(Math.abs(Lab.light(118) - 0.18))
        .isLessThan(Math.abs(Lab.light(117) - 0.18))
        .isLessThan(Math.abs(Lab.light(119) - 0.18));
    assertThat(Lab.ofSrgb(0x767676).chroma()).isLessThan(0.02);
  }

  /**
   * The quick answer is that of CIELAB itself: every third step of each channel, and every grey.
   */
  @Test
  void aToothColourIsQuicklyTheSameAsByCielab() {
    int teeth = 0;
    for (int red = 0; red < 256; red += 3) {
      for (int green = 100; green < 256; green += 3) {
        for (int blue = 0; blue < 256; blue += 3) {
          teeth += assertToothColourAsByCielab(red << 16 | green << 8 | blue) ? 1 : 0;
        }
      }
    }
    for (int grey = 100; grey < 256; grey++) {
      assertToothColourAsByCielab(grey * 0x010101);
    }
    assertThat(teeth).isBetween(10_000, 60_000);
  }

  private static boolean assertToothColourAsByCielab(int rgb) {
    boolean exact = ToothColour.is(Lab.ofSrgb(rgb));
    if (ToothColour.is(rgb) != exact) {
      assertThat(ToothColour.is(rgb)).as(Integer.toHexString(rgb)).isEqualTo(exact);
    }
    return exact;
  }
}
