package org.vestibule.dicom;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Dates and times to and from DA, TM and DT (PS3.5 6.2). */
final class Times {

  private static final DateTimeFormatter DATE =
      DateTimeFormatter.ofPattern("uuuuMMdd", Locale.ROOT);
  private static final DateTimeFormatter SECONDS =
      DateTimeFormatter.ofPattern("HHmmss", Locale.ROOT);
  private static final DateTimeFormatter FRACTION =
      DateTimeFormatter.ofPattern("HHmmss.SSSSSS", Locale.ROOT);
  private static final DateTimeFormatter OFFSET = DateTimeFormatter.ofPattern("xx", Locale.ROOT);

  private static final Pattern DA = Pattern.compile("(\\d{4})(\\d{2})(\\d{2})");
  private static final Pattern TM =
      Pattern.compile("(\\d{2})(?:(\\d{2})(?:(\\d{2})(?:\\.(\\d{1,6}))?)?)?");

  private Times() {}

  static String text(LocalDate date) {
    return DATE.format(date);
  }

  /** With microseconds if the time has a fraction of a second: TM holds no finer one. */
  static String text(LocalTime time) {
    LocalTime whole = time.truncatedTo(ChronoUnit.SECONDS);
    boolean hasFraction = !time.truncatedTo(ChronoUnit.MICROS).equals(whole);
    return (hasFraction ? FRACTION : SECONDS).format(time);
  }

  static String text(LocalDateTime time) {
    return text(time.toLocalDate()) + text(time.toLocalTime());
  }

  static String text(OffsetDateTime time) {
    return text(time.toLocalDateTime()) + OFFSET.format(time);
  }

  static Optional<LocalDate> date(String text) {
    Matcher da = DA.matcher(text);
    if (!da.matches()) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          LocalDate.of(
              Integer.parseInt(da.group(1)),
              Integer.parseInt(da.group(2)),
              Integer.parseInt(da.group(3))));
    } catch (DateTimeException noSuchDay) {
      return Optional.empty();
    }
  }

  static Optional<LocalTime> time(String text) {
    Matcher tm = TM.matcher(text);
    if (!tm.matches()) {
      return Optional.empty();
    }
    String fraction = tm.group(4) == null ? "0" : (tm.group(4) + "00000000").substring(0, 9);
    try {
      return Optional.of(
          LocalTime.of(
              Integer.parseInt(tm.group(1)),
              part(tm.group(2)),
              part(tm.group(3)),
              Integer.parseInt(fraction)));
    } catch (DateTimeException noSuchTime) {
      return Optional.empty();
    }
  }

  private static int part(@Nullable String digits) {
    return digits == null ? 0 : Integer.parseInt(digits);
  }
}
