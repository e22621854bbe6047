package org.vestibule.forward;

import java.time.Duration;
import java.util.random.RandomGenerator;

/** How long to wait before an object is sent again: longer each time, and never all at once. */
final class RetryPauses {

  private static final int MOST_DOUBLINGS = 20;

  /** How much longer than the one in the middle a pause may be. */
  private static final double MOST_OF_MIDDLE = 1.25;

  private final ForwardRules rules;
  private final RandomGenerator random;

  RetryPauses(ForwardRules rules, RandomGenerator random) {
    this.rules = rules;
    this.random = random;
  }

  /**
   * The pause after so many attempts: the first one doubled each time, of which chance takes or
   * gives a quarter, so that none is longer than the longest.
   *
   * @param attempts from 1
   */
  Duration after(int attempts) {
    int doublings = Math.min(Math.max(attempts - 1, 0), MOST_DOUBLINGS);
    long doubled = rules.firstPause().toMillis() << doublings;
    double middle = Math.min((double) doubled, rules.longestPause().toMillis() / MOST_OF_MIDDLE);
    double least = 2 - MOST_OF_MIDDLE;
    double share = least + random.nextDouble() * (MOST_OF_MIDDLE - least);
    return Duration.ofMillis((long) (middle * share));
  }
}
