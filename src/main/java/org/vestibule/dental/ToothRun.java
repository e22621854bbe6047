package org.vestibule.dental;

import java.util.ArrayList;
import java.util.List;

/** Neighbouring positions along an arch that hold the same kind of occupant; at least one. */
record ToothRun(List<ToothPosition> positions) {

  private static final int SHORTEST_RANGE = 3;

  /** Positions in arch order, grouped: three or more neighbours are one run, others stand alone. */
  static List<ToothRun> of(List<ToothPosition> positions) {
    List<ToothRun> runs = new ArrayList<>();
    int from = 0;
    while (from < positions.size()) {
      int to = from + 1;
      while (to < positions.size() && follows(positions.get(to - 1), positions.get(to))) {
        to++;
      }
      if (to - from < SHORTEST_RANGE) {
        to = from + 1;
      }
      runs.add(new ToothRun(List.copyOf(positions.subList(from, to))));
      from = to;
    }
    return runs;
  }

  private static boolean follows(ToothPosition first, ToothPosition second) {
    return first.occupant() == second.occupant()
        && ArchRange.neighbours(first.tooth(), second.tooth());
  }

  String words() {
    if (positions.size() == 1) {
      return first().words();
    }
    Tooth from = first().tooth();
    Tooth to = last().tooth();
    String what = first().occupant() == Occupant.TOOTH ? "" : first().occupant().words() + " at ";
    String counted = first().occupant() == Occupant.TOOTH ? " teeth)" : " positions)";
    return what
        + from.words()
        + " to "
        + to.words()
        + " ("
        + from
        + "-"
        + to
        + ", "
        + positions.size()
        + counted;
  }

  String text(Notation notation, boolean sayTooth) {
    String ends = mark(first().tooth(), notation);
    if (positions.size() > 1) {
      ends += "-" + mark(last().tooth(), notation);
    }
    boolean plain = first().occupant() == Occupant.TOOTH && !sayTooth;
    return plain ? ends : ends + " " + first().occupant().words();
  }

  private ToothPosition first() {
    return positions.get(0);
  }

  private ToothPosition last() {
    return positions.get(positions.size() - 1);
  }

  private static String mark(Tooth tooth, Notation notation) {
    return switch (notation) {
      case ISO_3950 -> tooth.toString();
      case UNIVERSAL -> "#" + tooth.universal();
      case PALMER -> tooth.palmer();
    };
  }
}
