package org.vestibule.assign;

import java.time.Duration;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.intake.WallClock;

/**
 * When a photograph was taken on the practice's clock.
 *
 * @param clock what its time means here
 * @param readings the local times it may mean; none if it has no time
 */
record PhotoTime(WallClock clock, List<LocalDateTime> readings) {

  static PhotoTime of(CaptureFacts facts, ZoneId zone) {
    WallClock clock = facts.clockAt(zone);
    LocalDateTime taken = facts.takenAt();
    if (taken == null) {
      return new PhotoTime(clock, List.of());
    }
    var moment = facts.moment();
    return clock == WallClock.OTHER_ZONE && moment != null
        ? new PhotoTime(clock, List.of(taken, LocalDateTime.ofInstant(moment, zone)))
        : new PhotoTime(clock, List.of(taken));
  }

  /** True if it is one moment, which can count as a fact. */
  boolean isFact() {
    return clock == WallClock.CLEAR;
  }

  boolean missing() {
    return readings.isEmpty();
  }

  /** True if no clock can say when it was: the hour came twice, or never. */
  boolean impossible() {
    return clock == WallClock.DOUBLED || clock == WallClock.SKIPPED;
  }

  boolean within(Visit visit) {
    return within(visit, Duration.ZERO);
  }

  /** True if a reading lies in the visit's window, widened by a tolerance at both ends. */
  boolean within(Visit visit, Duration tolerance) {
    return readings.stream()
        .anyMatch(
            taken ->
                !taken.isBefore(visit.start().minus(tolerance))
                    && !taken.isAfter(visit.end().plus(tolerance)));
  }
}
