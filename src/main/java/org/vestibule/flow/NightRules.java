package org.vestibule.flow;

import java.nio.file.Path;
import java.time.Duration;
import org.jspecify.annotations.Nullable;

/**
 * What a practice has settled about its nightly run.
 *
 * @param limit after which no further photograph is begun
 * @param verifyNights in how many nights every object is read again once
 * @param freeBytes that must be free on the disks of ledger and objects before anything is begun
 * @param silentDays after how many working days without a photograph a known phone is named; 0
 *     never
 * @param backup where the night's backup goes; null if the night makes none
 */
public record NightRules(
    Duration limit, int verifyNights, long freeBytes, int silentDays, @Nullable Copying backup) {

  /**
   * Where a night's backup goes.
   *
   * @param to a backup folder that was begun by hand
   * @param secretTo where the secret goes; null if it is not copied
   * @param program the program's name and version
   */
  public record Copying(Path to, @Nullable Path secretTo, String program) {}

  private static final long MEGABYTE = 1L << 20;

  /** What holds if nothing is settled. */
  public static final NightRules DEFAULT =
      new NightRules(Duration.ofHours(5), 28, 1000 * MEGABYTE, 3, null);

  public NightRules {
    if (limit.isNegative() || verifyNights < 1 || freeBytes < 0 || silentDays < 0) {
      throw new IllegalArgumentException("a nightly run's limits must not be negative");
    }
  }

  /** The same with so many megabytes. */
  public static NightRules of(Duration limit, int verifyNights, int freeMegabytes, int silentDays) {
    return new NightRules(limit, verifyNights, freeMegabytes * MEGABYTE, silentDays, null);
  }

  /** The same with a backup. */
  public NightRules with(@Nullable Copying copying) {
    return new NightRules(limit, verifyNights, freeBytes, silentDays, copying);
  }
}
