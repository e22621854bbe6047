package org.vestibule.flow.look;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Numbers and times as people read them, in English. */
public final class Say {

  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("EEEE, d MMMM uuuu", Locale.ENGLISH);
  private static final DateTimeFormatter MINUTE =
      DateTimeFormatter.ofPattern("HH:mm", Locale.ENGLISH);
  private static final DateTimeFormatter SECOND =
      DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ENGLISH);

  private Say() {}

  static String day(LocalDate day) {
    return DAY.format(day);
  }

  static String time(LocalDateTime time) {
    return SECOND.format(time);
  }

  /** A stretch of time, for example {@code Friday, 6 October 2023, 19:25 to 19:26}. */
  static String stretch(LocalDateTime start, LocalDateTime end) {
    String from = day(start.toLocalDate()) + ", " + MINUTE.format(start);
    if (MINUTE.format(start).equals(MINUTE.format(end))
        && start.toLocalDate().equals(end.toLocalDate())) {
      return from;
    }
    return start.toLocalDate().equals(end.toLocalDate())
        ? from + " to " + MINUTE.format(end)
        : from + " to " + day(end.toLocalDate()) + ", " + MINUTE.format(end);
  }

  /** A number with its noun, for example {@code 1 photograph} or {@code 3 photographs}. */
  static String count(int number, String one) {
    return number + " " + noun(number, one);
  }

  static String noun(int number, String one) {
    return number == 1 ? one : one + "s";
  }

  /** One digit after the point, none if it is 0. */
  static String decimal(double value) {
    String text = String.format(Locale.ROOT, "%.1f", value);
    return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
  }

  /** An exposure time, for example {@code 1/120 s}; null if it isn't known. */
  static @Nullable String exposure(@Nullable Double seconds) {
    if (seconds == null) {
      return null;
    }
    return seconds < 0.4 ? "1/" + Math.round(1 / seconds) + " s" : decimal(seconds) + " s";
  }

  /** The sentence with a capital at its start and a full stop at its end. */
  public static String sentence(String words) {
    return words.isEmpty() || words.endsWith(".") ? capital(words) : capital(words) + ".";
  }

  /** The words with a capital at their start. */
  public static String capital(String words) {
    if (words.isEmpty()) {
      return words;
    }
    int first = words.codePointAt(0);
    return Character.toString(Character.toUpperCase(first))
        + words.substring(Character.charCount(first));
  }
}
