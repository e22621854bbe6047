package org.vestibule.forward;

import java.time.Duration;
import java.util.random.RandomGenerator;

/** How long to wait before an object is sent again: longer each time, and never all at once. */
final class RetryPauses {

  private static final int MOST_DOUBLINGS = 20;

  private final ForwardRules rules;
  private final RandomGenerator random;

  RetryPauses(ForwardRules rules, RandomGenerator random) {
    this.rules = rules;
    this.random = random;
  }

  /**
   * The pause after so many attempts: the first one doubled each time up to the longest, and of
   * that between three quarters and five quarters.
   *
   * @param attempts from 1
   */
  Duration after(int attempts) {
    int doublings = Math.min(Math.max(attempts - 1, 0), MOST_DOUBLINGS);
    long doubled = rules.firstPause().toMillis() << doublings;
    long millis = Math.min(doubled, rules.longestPause().toMillis());
    return Duration.ofMillis((long) (millis * (0.75 + random.nextDouble() / 2)));
  }
}
