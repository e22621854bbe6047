package org.vestibule.assign;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.LocalDateTime;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.vestibule.intake.FileNames;

/** The time that some phones write into a file name, such as {@code IMG_20260514_101500.jpg}. */
final class NameClock {

  private static final Pattern CLOCK =
      Pattern.compile(
          "\\D{0,8}(20\\d\\d)(\\d\\d)(\\d\\d)[_-]?(\\d\\d)(\\d\\d)(\\d\\d)(?:[_-]?\\d{1,3})?(?:\\D.*)?",
          Pattern.DOTALL);
  private static final int QUARTER_MINUTES = 15;
  private static final Duration SLACK = Duration.ofSeconds(60);

  private NameClock() {}

  static Optional<LocalDateTime> of(String name) {
    Matcher m = CLOCK.matcher(FileNames.key(FileNames.last(FileNames.stem(name))));
    if (!m.matches()) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          LocalDateTime.of(
              Integer.parseInt(m.group(1)),
              Integer.parseInt(m.group(2)),
              Integer.parseInt(m.group(3)),
              Integer.parseInt(m.group(4)),
              Integer.parseInt(m.group(5)),
              Integer.parseInt(m.group(6))));
    } catch (DateTimeException notATime) {
      return Optional.empty();
    }
  }

  /**
   * By how many quarters of an hour the name's time is ahead of the file's: some phones write the
   * name in UTC, and zones differ by quarters. Empty if it is no such distance, within a minute.
   */
  static Optional<Long> quartersAhead(LocalDateTime named, LocalDateTime taken) {
    Duration ahead = Duration.between(taken, named);
    long quarters = Math.round(ahead.toSeconds() / (QUARTER_MINUTES * 60.0));
    Duration rest = ahead.minusMinutes(QUARTER_MINUTES * quarters).abs();
    return rest.compareTo(SLACK) <= 0 ? Optional.of(quarters) : Optional.empty();
  }
}
