package org.vestibule.forward;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoField;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Reads when an archive wants to be called again: Retry-After (RFC 9110 10.2.3). */
final class RetryAfter {

  /** Longer ones are as good as for ever; whoever waits has a bound of its own. */
  private static final int MOST_DIGITS = 9;

  /** How far into the future a year of two digits may lie (RFC 9110 5.6.7). */
  private static final int MOST_YEARS_AHEAD = 50;

  private RetryAfter() {}

  /**
   * The moment before which it wants no call; empty if the text says none.
   *
   * @param text seconds, or a date in one of the three forms of RFC 9110 5.6.7
   */
  static Optional<Instant> read(String text, Instant now) {
    String said = text.strip();
    if (!said.isEmpty() && said.chars().allMatch(c -> c >= '0' && c <= '9')) {
      String digits = said.replaceFirst("^0+(?=.)", "");
      long seconds =
          digits.length() > MOST_DIGITS ? (long) Math.pow(10, MOST_DIGITS) : Long.parseLong(digits);
      return Optional.of(now.plus(Duration.ofSeconds(seconds)));
    }
    for (DateTimeFormatter form : forms(now)) {
      try {
        return Optional.of(ZonedDateTime.parse(said, form).toInstant());
      } catch (DateTimeParseException another) {
        // the next form
      }
    }
    return Optional.empty();
  }

  private static List<DateTimeFormatter> forms(Instant now) {
    LocalDate oldest =
        LocalDate.ofInstant(now, ZoneOffset.UTC).plusYears(MOST_YEARS_AHEAD).minusYears(99);
    DateTimeFormatter obsolete =
        new DateTimeFormatterBuilder()
            .appendPattern("EEEE, dd-MMM-")
            .appendValueReduced(ChronoField.YEAR, 2, 2, oldest)
            .appendPattern(" HH:mm:ss 'GMT'")
            .toFormatter(Locale.ENGLISH)
            .withZone(ZoneOffset.UTC);
    DateTimeFormatter asctime =
        DateTimeFormatter.ofPattern("EEE MMM ppd HH:mm:ss yyyy", Locale.ENGLISH)
            .withZone(ZoneOffset.UTC);
    return List.of(DateTimeFormatter.RFC_1123_DATE_TIME, obsolete, asctime);
  }
}
