package org.vestibule.flow;

import java.time.Duration;

/**
 * What a practice has settled about its nightly run.
 *
 * @param limit after which no further photograph is begun
 * @param verifyNights in how many nights every object is read again once
 * @param freeBytes that must be free on the disks of ledger and objects before anything is begun
 * @param silentDays after how many working days without a photograph a known phone is named; 0
 *     never
 */
public record NightRules(Duration limit, int verifyNights, long freeBytes, int silentDays) {

  private static final long MEGABYTE = 1L << 20;

  /** What holds if nothing is settled. */
  public static final NightRules DEFAULT =
      new NightRules(Duration.ofHours(5), 28, 1000 * MEGABYTE, 3);

  public NightRules {
    if (limit.isNegative() || verifyNights < 1 || freeBytes < 0 || silentDays < 0) {
      throw new IllegalArgumentException("a nightly run's limits must not be negative");
    }
  }

  /** The same with so many megabytes. */
  public static NightRules of(Duration limit, int verifyNights, int freeMegabytes, int silentDays) {
    return new NightRules(limit, verifyNights, freeMegabytes * MEGABYTE, silentDays);
  }
}
