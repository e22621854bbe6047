package org.vestibule.search;

import java.time.LocalDate;
import java.time.Month;
import java.time.YearMonth;
import java.time.format.TextStyle;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Dates as people say them: {@code since march}, {@code 2026-03}, {@code yesterday}. */
final class DateWords {

  private static final Pattern ISO = Pattern.compile("(\\d{4})-(\\d{2})(?:-(\\d{2}))?");

  /**
   * Days that were said.
   *
   * @param tokens how many words say it
   * @param words how it was understood
   */
  record Taken(@Nullable LocalDate from, @Nullable LocalDate to, int tokens, String words) {}

  /** A span of days. */
  private record Span(LocalDate first, LocalDate last) {}

  private DateWords() {}

  static Optional<Taken> at(List<String> tokens, int at, LocalDate today) {
    String word = tokens.get(at).toLowerCase(Locale.ROOT);
    String next = at + 1 < tokens.size() ? tokens.get(at + 1) : "";
    switch (word) {
      case "since", "from" -> {
        return span(next, today).map(s -> new Taken(s.first(), null, 2, "since " + s.first()));
      }
      case "until", "till" -> {
        return span(next, today).map(s -> new Taken(null, s.last(), 2, "until " + s.last()));
      }
      case "between" -> {
        return between(tokens, at, today);
      }
      case "last" -> {
        return next.equalsIgnoreCase("week")
            ? Optional.of(new Taken(today.minusDays(7), today, 2, "since " + today.minusDays(7)))
            : Optional.empty();
      }
      default -> {
        return span(word, today)
            .map(s -> new Taken(s.first(), s.last(), 1, s.first() + " to " + s.last()));
      }
    }
  }

  private static Optional<Taken> between(List<String> tokens, int at, LocalDate today) {
    if (at + 3 >= tokens.size() || !tokens.get(at + 2).equalsIgnoreCase("and")) {
      return Optional.empty();
    }
    Optional<Span> first = span(tokens.get(at + 1), today);
    Optional<Span> last = span(tokens.get(at + 3), today);
    return first.isEmpty() || last.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Taken(
                first.get().first(),
                last.get().last(),
                4,
                first.get().first() + " to " + last.get().last()));
  }

  private static Optional<Span> span(String word, LocalDate today) {
    String plain = word.toLowerCase(Locale.ROOT);
    if (plain.equals("today") || plain.equals("yesterday")) {
      LocalDate day = plain.equals("today") ? today : today.minusDays(1);
      return Optional.of(new Span(day, day));
    }
    Matcher iso = ISO.matcher(plain);
    if (iso.matches()) {
      return iso(iso);
    }
    for (Month month : Month.values()) {
      if (plain.equals(
          month.getDisplayName(TextStyle.FULL, Locale.ENGLISH).toLowerCase(Locale.ROOT))) {
        YearMonth latest = YearMonth.of(today.getYear(), month);
        YearMonth meant = latest.isAfter(YearMonth.from(today)) ? latest.minusYears(1) : latest;
        return Optional.of(new Span(meant.atDay(1), meant.atEndOfMonth()));
      }
    }
    return Optional.empty();
  }

  private static Optional<Span> iso(Matcher iso) {
    int month = Integer.parseInt(iso.group(2));
    if (month < 1 || month > 12) {
      return Optional.empty();
    }
    YearMonth in = YearMonth.of(Integer.parseInt(iso.group(1)), month);
    if (iso.group(3) == null) {
      return Optional.of(new Span(in.atDay(1), in.atEndOfMonth()));
    }
    int day = Integer.parseInt(iso.group(3));
    return in.isValidDay(day)
        ? Optional.of(new Span(in.atDay(day), in.atDay(day)))
        : Optional.empty();
  }
}
