package org.vestibule.web;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.vestibule.dental.Arch;
import org.vestibule.dental.Notation;
import org.vestibule.dental.Side;
import org.vestibule.dental.Tooth;
import org.vestibule.words.TradeWords;

/** The teeth as one looks at the patient: upper above lower, the patient's right at the left. */
final class ToothChart {

  private final TradeWords trade;
  private final List<Tooth> chosen;

  ToothChart(TradeWords trade, List<Tooth> chosen) {
    this.trade = trade;
    this.chosen = chosen;
  }

  /** Permanent and deciduous quadrants, each from the viewer's left to right. */
  Map<String, Object> model() {
    return Map.of(
        "permanent", quadrants(false),
        "deciduous", quadrants(true),
        "open", chosen.stream().anyMatch(Tooth::deciduous));
  }

  private List<Map<String, Object>> quadrants(boolean deciduous) {
    List<Map<String, Object>> all = new ArrayList<>();
    for (Arch arch : Arch.values()) {
      for (Side side : Side.values()) {
        all.add(
            Map.of(
                "place", arch.words() + "-" + side.words(),
                "word", trade.place(arch, side),
                "teeth", teeth(arch, side, deciduous)));
      }
    }
    return all;
  }

  private List<Map<String, Object>> teeth(Arch arch, Side side, boolean deciduous) {
    Comparator<Tooth> outwards = Comparator.comparingInt(tooth -> tooth.iso() % 10);
    return Tooth.all().stream()
        .filter(tooth -> tooth.arch() == arch && tooth.side() == side)
        .filter(tooth -> tooth.deciduous() == deciduous)
        .sorted(side == Side.RIGHT ? outwards.reversed() : outwards)
        .map(this::tooth)
        .toList();
  }

  private Map<String, Object> tooth(Tooth tooth) {
    return Map.of(
        "iso", tooth.iso(),
        "universal", TradeWords.number(tooth, Notation.UNIVERSAL),
        "palmer", TradeWords.number(tooth, Notation.PALMER),
        "word", trade.tooth(tooth),
        "shape", shape(tooth),
        "chosen", chosen.contains(tooth));
  }

  /** Which of the four drawings stands for it. */
  private static String shape(Tooth tooth) {
    String type = tooth.type();
    return type.substring(type.lastIndexOf(' ') + 1);
  }
}
