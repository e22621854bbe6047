package org.vestibule.assign;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.vestibule.base.Outcome;

/**
 * Reads dates and times as lists have them. A date that two countries read differently is refused:
 * 03/04/2026 is in March or in April.
 */
final class CalendarText {

  private static final Pattern YEAR_FIRST =
      Pattern.compile("(\\d{4})[-/.](\\d{1,2})[-/.](\\d{1,2})");
  private static final Pattern COMPACT = Pattern.compile("(\\d{4})(\\d{2})(\\d{2})");
  private static final Pattern DOTS = Pattern.compile("(\\d{1,2})\\.\\s?(\\d{1,2})\\.\\s?(\\d{4})");
  private static final Pattern SLASHES = Pattern.compile("(\\d{1,2})([-/])(\\d{1,2})\\2(\\d{4})");
  private static final Pattern NAMED =
      Pattern.compile("(\\d{1,2})[ .-]+([a-z]{3,9})[ .-]+(\\d{4})");
  private static final Pattern TIME =
      Pattern.compile("(\\d{1,2}):(\\d{2})(?::(\\d{2})(?:\\.0+)?)?(?:\\s?([ap])\\.?m\\.?)?");
  private static final Pattern DATE_AND_TIME = Pattern.compile("(.*?)(?:[T ]+(\\d{1,2}:.*))?");
  private static final List<String> MONTHS =
      List.of(
          "january",
          "february",
          "march",
          "april",
          "may",
          "june",
          "july",
          "august",
          "september",
          "october",
          "november",
          "december");
  private static final String ADVICE = "write dates as 2026-03-11 and times as 09:00";

  private CalendarText() {}

  /** A cell's date part and its time part, each maybe empty. */
  record Parts(String date, String time) {}

  static Parts parts(String cell) {
    if (TIME.matcher(cell.toLowerCase(Locale.ROOT)).matches()) {
      return new Parts("", cell);
    }
    Matcher matcher = DATE_AND_TIME.matcher(cell);
    if (!matcher.matches()) {
      return new Parts(cell, "");
    }
    String time = matcher.group(2);
    return new Parts(matcher.group(1).strip(), time == null ? "" : time.strip());
  }

  static Outcome<LocalDate> date(String text) {
    Matcher matcher = YEAR_FIRST.matcher(text);
    if (matcher.matches()) {
      return of(matcher.group(1), matcher.group(2), matcher.group(3));
    }
    matcher = COMPACT.matcher(text);
    if (matcher.matches()) {
      return of(matcher.group(1), matcher.group(2), matcher.group(3));
    }
    matcher = DOTS.matcher(text);
    if (matcher.matches()) {
      return of(matcher.group(3), matcher.group(2), matcher.group(1));
    }
    matcher = SLASHES.matcher(text);
    if (matcher.matches()) {
      return either(matcher.group(1), matcher.group(3), matcher.group(4));
    }
    matcher = NAMED.matcher(text.toLowerCase(Locale.ROOT));
    if (matcher.matches()) {
      Optional<Integer> month = month(matcher.group(2));
      if (month.isPresent()) {
        return of(matcher.group(3), month.get().toString(), matcher.group(1));
      }
    }
    return Outcome.refused("this is not a date that is understood", ADVICE);
  }

  static Outcome<LocalTime> time(String text) {
    Matcher matcher = TIME.matcher(text.toLowerCase(Locale.ROOT));
    if (!matcher.matches()) {
      return Outcome.refused("this is not a time that is understood", ADVICE);
    }
    int hour = Integer.parseInt(matcher.group(1));
    String half = matcher.group(4);
    if (half != null && (hour < 1 || hour > 12)) {
      return Outcome.refused("a time with am or pm has hours from 1 to 12", ADVICE);
    }
    int hours = half == null ? hour : hour % 12 + (half.equals("p") ? 12 : 0);
    String seconds = matcher.group(3);
    try {
      return Outcome.done(
          LocalTime.of(
              hours,
              Integer.parseInt(matcher.group(2)),
              seconds == null ? 0 : Integer.parseInt(seconds)));
    } catch (DateTimeException e) {
      return Outcome.refused("there is no such time of day", ADVICE);
    }
  }

  private static Outcome<LocalDate> either(String one, String other, String year) {
    int first = Integer.parseInt(one);
    int second = Integer.parseInt(other);
    if (first <= 12 && second <= 12 && first != second) {
      return Outcome.refused(
          "this date can be read with the day or the month first", "write it as 2026-03-11");
    }
    return first > 12 ? of(year, other, one) : of(year, one, other);
  }

  private static Optional<Integer> month(String word) {
    List<Integer> fits =
        IntStream.rangeClosed(1, 12)
            .filter(month -> MONTHS.get(month - 1).startsWith(word))
            .boxed()
            .toList();
    return fits.size() == 1 ? Optional.of(fits.get(0)) : Optional.empty();
  }

  private static Outcome<LocalDate> of(String year, String month, String day) {
    try {
      return Outcome.done(
          LocalDate.of(Integer.parseInt(year), Integer.parseInt(month), Integer.parseInt(day)));
    } catch (DateTimeException e) {
      return Outcome.refused("there is no such day in the calendar", ADVICE);
    }
  }
}
