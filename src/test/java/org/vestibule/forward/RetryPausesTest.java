package org.vestibule.forward;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.LongSummaryStatistics;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How pauses grow, how far chance moves them, and that none is longer than the settings allow. */
class RetryPausesTest {

  private static final int DRAWS = 2_000;

  private final long seed = Long.getLong("vestibule.seed", 20261126L);

  private RetryPauses pauses(Duration first, Duration longest) {
    return new RetryPauses(
        new ForwardRules(
            List.of(),
            first,
            longest,
            10,
            Duration.ofHours(2),
            Optional.empty(),
            ForwardRules.SourceRemoval.NEVER),
        new Random(seed));
  }

  private static LongSummaryStatistics draws(RetryPauses pauses, int attempts) {
    return IntStream.range(0, DRAWS)
        .mapToLong(draw -> pauses.after(attempts).toMillis())
        .summaryStatistics();
  }

  /**
   * From five minutes up to six hours: doubled each time, a quarter less or more by chance, and at
   * the end between three fifths of the longest pause and all of it (our own judgement; that pauses
   * grow exponentially, with jitter and a cap, is common practice).
   */
  @ParameterizedTest
  @CsvSource({
    "1, 225, 375",
    "2, 450, 750",
    "3, 900, 1500",
    "4, 1800, 3000",
    "5, 3600, 6000",
    "6, 7200, 12000",
    "7, 12960, 21600",
    "8, 12960, 21600",
    "1000, 12960, 21600"
  })
  void pausesGrowAreMovedByChanceAndAreCapped(int attempts, long leastSeconds, long mostSeconds) {
    System.out.println("seed " + seed);
    RetryPauses pauses = pauses(Duration.ofMinutes(5), Duration.ofHours(6));
    LongSummaryStatistics drawn = draws(pauses, attempts);
    long least = leastSeconds * 1000;
    long most = mostSeconds * 1000;
    assertThat(drawn.getMin()).isBetween(least, least + (most - least) / 100);
    assertThat(drawn.getMax()).isBetween(most - (most - least) / 100, most);
    assertThat(drawn.getAverage())
        .as("as often shorter as longer")
        .isBetween(least + (most - least) * 0.47, least + (most - least) * 0.53);
  }

  /** "no pause is longer", whatever the settings say. */
  @ParameterizedTest
  @CsvSource({"5, 360", "5, 6", "1440, 1440", "1, 1440", "7, 7"})
  void noPauseIsLongerThanTheLongest(int firstMinutes, int longestMinutes) {
    System.out.println("seed " + seed);
    RetryPauses pauses =
        pauses(Duration.ofMinutes(firstMinutes), Duration.ofMinutes(longestMinutes));
    for (int attempts = 0; attempts < 70; attempts++) {
      LongSummaryStatistics drawn = draws(pauses, attempts);
      assertThat(drawn.getMax()).isLessThanOrEqualTo(Duration.ofMinutes(longestMinutes).toMillis());
      assertThat(drawn.getMin()).isPositive();
    }
  }

  /** Two destinations that fell over together are not called together again and again. */
  @Test
  void twoInARowAreNotTheSame() {
    RetryPauses pauses = pauses(Duration.ofMinutes(5), Duration.ofHours(6));
    assertThat(IntStream.range(0, 100).mapToObj(draw -> pauses.after(1)).distinct().count())
        .isGreaterThan(95);
  }
}
