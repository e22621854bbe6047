package org.vestibule.store.index;

import java.time.LocalDate;
import java.time.LocalDateTime;

/**
 * Reads dates and times as they are written in descriptions (ISO 8601). A page of answers has a
 * hundred, and the library's reader, which understands far more, takes most of the time of reading
 * a description; it is left what is not in the usual form.
 */
final class IsoTime {

  private static final int YEAR = 4;
  private static final int MONTH_AT = 5;
  private static final int DAY_AT = 8;
  private static final int DATE = 10;
  private static final int HOUR_AT = 11;
  private static final int MINUTE_AT = 14;
  private static final int SECOND_AT = 17;
  private static final int TIME = 19;
  private static final int DECIMAL = 10;

  private IsoTime() {}

  static LocalDate date(String text) {
    return text.length() == DATE && isDate(text) ? dateOf(text) : LocalDate.parse(text);
  }

  static LocalDateTime dateTime(String text) {
    boolean usual =
        text.length() == TIME
            && isDate(text)
            && text.charAt(DATE) == 'T'
            && text.charAt(MINUTE_AT - 1) == ':'
            && text.charAt(SECOND_AT - 1) == ':';
    if (!usual) {
      return LocalDateTime.parse(text);
    }
    return dateOf(text).atTime(two(text, HOUR_AT), two(text, MINUTE_AT), two(text, SECOND_AT));
  }

  private static boolean isDate(String text) {
    return text.charAt(YEAR) == '-' && text.charAt(DAY_AT - 1) == '-';
  }

  private static LocalDate dateOf(String text) {
    int year = Integer.parseInt(text, 0, YEAR, DECIMAL);
    return LocalDate.of(year, two(text, MONTH_AT), two(text, DAY_AT));
  }

  private static int two(String text, int at) {
    return Integer.parseInt(text, at, at + 2, DECIMAL);
  }
}
