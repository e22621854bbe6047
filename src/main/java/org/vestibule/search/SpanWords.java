package org.vestibule.search;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.Month;
import java.time.YearMonth;
import java.time.format.TextStyle;
import java.time.temporal.ChronoUnit;
import java.time.temporal.TemporalAdjusters;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Days, weeks, months and years as people say them: {@code march}, {@code march 2025}, {@code
 * 2026-03-12}, {@code 12 march 2026}, {@code yesterday}, {@code last month}. A month without a year
 * is the latest one that has begun; weeks begin on Monday (ISO 8601).
 */
final class SpanWords {

  private static final Pattern ISO = Pattern.compile("([0-9]{4})-([0-9]{2})(?:-([0-9]{2}))?");
  private static final Pattern YEAR = Pattern.compile("(?:19|20)[0-9]{2}");
  private static final Pattern DAY = Pattern.compile("0?[1-9]|[12][0-9]|3[01]");
  private static final Pattern COUNT = Pattern.compile("[1-9][0-9]{0,2}");
  private static final Map<String, Month> MONTHS = months();
  private static final Map<String, DayOfWeek> WEEKDAYS = weekdays();
  private static final Map<String, ChronoUnit> UNITS =
      Map.of(
          "days", ChronoUnit.DAYS,
          "weeks", ChronoUnit.WEEKS,
          "months", ChronoUnit.MONTHS,
          "years", ChronoUnit.YEARS);

  private final List<String> tokens;
  private final LocalDate today;

  /**
   * @param tokens words in lower case
   */
  SpanWords(List<String> tokens, LocalDate today) {
    this.tokens = tokens;
    this.today = today;
  }

  private static Map<String, Month> months() {
    Map<String, Month> months = new TreeMap<>();
    for (Month month : Month.values()) {
      String name = month.getDisplayName(TextStyle.FULL, Locale.ENGLISH).toLowerCase(Locale.ROOT);
      months.put(name, month);
      months.put(name.substring(0, 3), month);
    }
    months.put("sept", Month.SEPTEMBER);
    return months;
  }

  private static Map<String, DayOfWeek> weekdays() {
    Map<String, DayOfWeek> days = new TreeMap<>();
    for (DayOfWeek day : DayOfWeek.values()) {
      days.put(day.getDisplayName(TextStyle.FULL, Locale.ENGLISH).toLowerCase(Locale.ROOT), day);
    }
    return days;
  }

  static boolean isMonth(String word) {
    return MONTHS.containsKey(word);
  }

  static boolean isYear(String word) {
    return YEAR.matcher(word).matches();
  }

  /** True if the word could be a day of a month. */
  static boolean isDayOfMonth(String word) {
    return DAY.matcher(word).matches();
  }

  /** Words of which days are said, for suggestions. */
  static List<String> vocabulary() {
    return java.util.stream.Stream.of(
            MONTHS.keySet().stream().filter(name -> name.length() > 3),
            WEEKDAYS.keySet().stream(),
            java.util.stream.Stream.of("today", "yesterday"))
        .flatMap(words -> words)
        .toList();
  }

  /** The days that the words from this place on say, as many words as belong together. */
  Optional<Span> at(int at) {
    String word = word(at);
    if (word.equals("today") || word.equals("yesterday")) {
      return Optional.of(Span.day(word.equals("today") ? today : today.minusDays(1), 1));
    }
    if (word.equals("this") || word.equals("last") || word.equals("past")) {
      return unit(word, at);
    }
    DayOfWeek weekday = WEEKDAYS.get(word);
    if (weekday != null) {
      return Optional.of(Span.day(today.with(TemporalAdjusters.previousOrSame(weekday)), 1));
    }
    Matcher iso = ISO.matcher(word);
    if (iso.matches()) {
      return iso(iso);
    }
    if (isYear(word)) {
      LocalDate first = LocalDate.of(Integer.parseInt(word), 1, 1);
      return Optional.of(Span.of(first, first.plusYears(1).minusDays(1), 1));
    }
    return isDayOfMonth(word) ? day(word, word(at + 1), word(at + 2)) : month(at);
  }

  private String word(int at) {
    return at < tokens.size() ? tokens.get(at) : "";
  }

  private Optional<Span> unit(String which, int at) {
    String next = word(at + 1);
    if (!which.equals("this") && COUNT.matcher(next).matches()) {
      ChronoUnit counted = UNITS.get(word(at + 2));
      return counted == null
          ? Optional.empty()
          : Optional.of(Span.of(today.minus(Long.parseLong(next), counted), today, 3));
    }
    if (which.equals("past")) {
      return Optional.empty();
    }
    boolean current = which.equals("this");
    LocalDate monday = today.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
    YearMonth month = YearMonth.from(today);
    LocalDate newYear = today.withDayOfYear(1);
    return switch (next) {
      // "last week" is said for the week before and for the last seven days: both are meant.
      case "week" -> Optional.of(Span.of(current ? monday : monday.minusWeeks(1), today, 2));
      case "month" ->
          Optional.of(current ? Span.of(month.atDay(1), today, 2) : whole(month.minusMonths(1), 2));
      case "year" ->
          Optional.of(
              current
                  ? Span.of(newYear, today, 2)
                  : Span.of(newYear.minusYears(1), newYear.minusDays(1), 2));
      default -> Optional.empty();
    };
  }

  private static Span whole(YearMonth month, int tokens) {
    return Span.of(month.atDay(1), month.atEndOfMonth(), tokens);
  }

  private static Optional<Span> iso(Matcher iso) {
    int month = Integer.parseInt(iso.group(2));
    if (month < 1 || month > 12) {
      return Optional.empty();
    }
    YearMonth in = YearMonth.of(Integer.parseInt(iso.group(1)), month);
    return iso.group(3) == null
        ? Optional.of(whole(in, 1))
        : day(in, Integer.parseInt(iso.group(3)), 1);
  }

  private static Optional<Span> day(YearMonth in, int day, int tokens) {
    return in.isValidDay(day) ? Optional.of(Span.day(in.atDay(day), tokens)) : Optional.empty();
  }

  /** {@code 12 march 2026}. */
  private static Optional<Span> day(String day, String month, String year) {
    Month in = MONTHS.get(month);
    return in == null || !isYear(year)
        ? Optional.empty()
        : day(YearMonth.of(Integer.parseInt(year), in), Integer.parseInt(day), 3);
  }

  /** {@code march}, {@code march 2025} or {@code march 12 2026}. */
  private Optional<Span> month(int at) {
    Month month = MONTHS.get(word(at));
    if (month == null) {
      return Optional.empty();
    }
    String next = word(at + 1);
    if (isYear(next)) {
      return Optional.of(whole(YearMonth.of(Integer.parseInt(next), month), 2));
    }
    if (isDayOfMonth(next)) {
      return day(next, word(at), word(at + 2));
    }
    YearMonth latest = YearMonth.of(today.getYear(), month);
    YearMonth meant = latest.isAfter(YearMonth.from(today)) ? latest.minusYears(1) : latest;
    return Optional.of(new Span(meant.atDay(1), meant.atEndOfMonth(), true, 1));
  }
}
