package org.vestibule.dental;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.vestibule.base.Outcome;

/**
 * The teeth from one to another along an arch: 13-23 is 13, 12, 11, 21, 22, 23, never the numbers
 * between.
 */
final class ArchRange {

  private ArchRange() {}

  static Outcome<List<Tooth>> between(Tooth from, Tooth to) {
    if (from.arch() != to.arch()) {
      return Outcome.refused(
          "a range from "
              + from.wordsAndNumber()
              + " to "
              + to.wordsAndNumber()
              + " would cross from one arch to the other",
          "for the two teeth alone write \"FDI "
              + from
              + ", "
              + to
              + "\"; for a range name both ends in one arch, as in FDI 13-23");
    }
    if (from.deciduous() != to.deciduous()) {
      return Outcome.refused(
          "a range from "
              + from.wordsAndNumber()
              + " to "
              + to.wordsAndNumber()
              + " would mix permanent and deciduous teeth",
          "list the teeth one by one, or as ranges of one dentition each");
    }
    int low = Math.min(from.alongArch(), to.alongArch());
    int high = Math.max(from.alongArch(), to.alongArch());
    List<Tooth> teeth = new ArrayList<>();
    for (Tooth tooth : Tooth.all()) {
      if (tooth.arch() == from.arch()
          && tooth.deciduous() == from.deciduous()
          && tooth.alongArch() >= low
          && tooth.alongArch() <= high) {
        teeth.add(tooth);
      }
    }
    teeth.sort(Comparator.comparingInt(Tooth::alongArch));
    return Outcome.done(List.copyOf(teeth));
  }

  /** True if the second is the next tooth after the first, towards the patient's left. */
  static boolean neighbours(Tooth first, Tooth second) {
    int step = first.alongArch() == -1 ? 2 : 1;
    return first.arch() == second.arch()
        && first.deciduous() == second.deciduous()
        && second.alongArch() - first.alongArch() == step;
  }
}
