package org.vestibule.flow.night;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.vestibule.flow.Practice;

/**
 * Known phones from which nothing has come for some working days: a phone that stopped sending is
 * noticed before its memory is full. Working days are Monday to Friday (common practice, no
 * source).
 */
final class SilentPhones {

  /** A phone that is silent for this much longer is taken for one that is no longer used. */
  private static final int RETIRED_AFTER = 20;

  private SilentPhones() {}

  /** A sentence for each silent phone; it names the camera, and nothing of a patient. */
  static List<String> warnings(Practice practice, int workingDays) {
    List<String> warnings = new ArrayList<>();
    if (workingDays == 0) {
      return warnings;
    }
    ZoneId zone = practice.settings().zone();
    LocalDate today = LocalDate.ofInstant(practice.clock().instant(), zone);
    Map<String, Instant> lastSeen = practice.store().ledger().arrivals().lastSeen("phone");
    lastSeen.forEach(
        (phone, at) -> {
          int silent = workingDays(LocalDate.ofInstant(at, zone), today);
          if (silent >= workingDays && silent <= workingDays + RETIRED_AFTER) {
            warnings.add(
                "nothing has come from the phone "
                    + phone
                    + " for "
                    + silent
                    + " working days; check that it still sends its photographs");
          }
        });
    return warnings;
  }

  /** Whole working days that lie between two days. */
  static int workingDays(LocalDate from, LocalDate to) {
    int days = 0;
    for (LocalDate day = from.plusDays(1); day.isBefore(to); day = day.plusDays(1)) {
      boolean weekend =
          day.getDayOfWeek() == DayOfWeek.SATURDAY || day.getDayOfWeek() == DayOfWeek.SUNDAY;
      days += weekend ? 0 : 1;
    }
    return days;
  }
}
