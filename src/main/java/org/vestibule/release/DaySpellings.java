package org.vestibule.release;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** The ways in which a day is written. */
final class DaySpellings {

  private static final List<DateTimeFormatter> FORMS =
      List.of(
              "uuuuMMdd",
              "uuuu-MM-dd",
              "uuuu/MM/dd",
              "uuuu.MM.dd",
              "uuuu:MM:dd",
              "dd.MM.uuuu",
              "d.M.uuuu",
              "dd/MM/uuuu",
              "d/M/uuuu",
              "MM/dd/uuuu",
              "M/d/uuuu",
              "dd-MM-uuuu",
              "dd.MM.uu",
              "dd/MM/uu",
              "MM/dd/uu",
              "d MMMM uuuu",
              "d. MMMM uuuu",
              "MMMM d, uuuu",
              "d MMM uuuu",
              "MMM d, uuuu")
          .stream()
          .map(form -> DateTimeFormatter.ofPattern(form, Locale.ENGLISH))
          .toList();

  private DaySpellings() {}

  static Set<String> of(LocalDate day) {
    Set<String> spellings = new LinkedHashSet<>();
    FORMS.forEach(form -> spellings.add(form.format(day)));
    return spellings;
  }
}
