package org.vestibule.simulator;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The exact bound against values from elsewhere. */
class UpperBoundTest {

  /**
   * Upper ends of the two-sided 95 % interval as tables print them (0 of 10: 0.308; 1 of 10: 0.445;
   * 5 of 20: 0.491; from memory), to more places by a summation in another language.
   */
  @ParameterizedTest
  @CsvSource({"0, 10, 0.308497", "1, 10, 0.445016", "5, 20, 0.491046"})
  void twoSided(long seen, long of, double bound) {
    assertThat(UpperBound.oneSided(seen, of, 0.975)).isCloseTo(bound, within(1e-6));
  }

  /** One-sided 95 %, by a summation in another language. */
  @ParameterizedTest
  @CsvSource({"1, 10, 0.394163", "3, 100, 0.075711", "40, 1000, 0.051753"})
  void oneSided(long seen, long of, double bound) {
    assertThat(UpperBound.oneSided(seen, of, 0.95)).isCloseTo(bound, within(1e-6));
  }

  @Test
  void noneOfManyIsAboutThreeOfThem() {
    assertThat(UpperBound.oneSided(0, 1000, 0.95)).isCloseTo(3.0 / 1000, within(1e-5));
    assertThat(UpperBound.oneSided(0, 100, 0.95))
        .isCloseTo(1 - Math.pow(0.05, 0.01), within(1e-12));
  }

  @Test
  void largeCountsDoNotUnderflow() {
    assertThat(UpperBound.oneSided(50_000, 100_000, 0.95)).isBetween(0.5, 0.51);
    assertThat(UpperBound.oneSided(7, 7, 0.95)).isEqualTo(1);
  }

  @Test
  void noShareIsRefused() {
    assertThatThrownBy(() -> UpperBound.oneSided(3, 2, 0.95)).hasMessage("3 of 2 is no share");
  }
}
