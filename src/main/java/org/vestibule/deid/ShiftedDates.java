package org.vestibule.deid;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.ResolverStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.vestibule.dicom.Element;
import org.vestibule.dicom.Vr;

/**
 * Moves dates by a fixed number of days (PS3.15 E.3.6, Modified Dates option): intervals between
 * them stay. A date that can't be read is not moved but lost, and so is an offset from UTC, which
 * tells a place.
 */
final class ShiftedDates {

  private static final DateTimeFormatter DATE =
      DateTimeFormatter.ofPattern("uuuuMMdd", Locale.ROOT).withResolverStyle(ResolverStyle.STRICT);
  private static final int DATE_DIGITS = 8;
  private static final String TIME = "(?:\\d{2}(?:\\d{2}(?:\\d{2}(?:\\.\\d{1,6})?)?)?)?";

  private final long days;
  private final boolean keepsTimes;

  ShiftedDates(long days, boolean keepsTimes) {
    this.days = days;
    this.keepsTimes = keepsTimes;
  }

  /** The moved values of DA or DT, the times of TM as they are; empty if one can't be moved. */
  Optional<List<String>> of(Element element) {
    List<String> moved = new ArrayList<>();
    for (String value : element.strings()) {
      Optional<String> one = one(element.vr(), value);
      if (one.isEmpty()) {
        return Optional.empty();
      }
      moved.add(one.get());
    }
    return moved.isEmpty() ? Optional.empty() : Optional.of(moved);
  }

  private Optional<String> one(Vr vr, String value) {
    return switch (vr) {
      case DA -> date(value);
      case DT -> dateTime(value);
      case TM -> keepsTimes && value.matches(TIME) ? Optional.of(value) : Optional.empty();
      default -> Optional.empty();
    };
  }

  private Optional<String> dateTime(String value) {
    String local = value.replaceFirst("[+-]\\d{4}$", "");
    if (local.length() < DATE_DIGITS || !local.substring(DATE_DIGITS).matches(TIME)) {
      return Optional.empty();
    }
    return date(local.substring(0, DATE_DIGITS))
        .map(date -> keepsTimes ? date + local.substring(DATE_DIGITS) : date);
  }

  private Optional<String> date(String value) {
    try {
      LocalDate moved = LocalDate.parse(value, DATE).plusDays(days);
      return moved.getYear() < 1 || moved.getYear() > 9999
          ? Optional.empty()
          : Optional.of(DATE.format(moved));
    } catch (DateTimeException unreadable) {
      return Optional.empty();
    }
  }
}
