package org.vestibule.assign;

import java.util.ArrayList;
import java.util.List;

/** Says where photographs were filed by cards that no longer settle them. */
final class LateArrivals {

  private LateArrivals() {}

  static List<String> notes(DeviceRoll roll, List<CheckedStretch> stretches) {
    List<String> notes = new ArrayList<>();
    for (CheckedStretch each : stretches) {
      long filed =
          each.stretch().members(roll).stream()
              .filter(member -> !member.seen().filedVisit().isEmpty())
              .count();
      if (filed > 0 && each.contradictsItself()) {
        notes.add(
            "between the cards of a visit on "
                + each.day(roll)
                + " "
                + filed
                + " photographs are filed already, but the cards now contradict that ("
                + each.reasons().get(0).sentence()
                + "); look whether they are filed rightly");
      }
    }
    return notes;
  }
}
