package org.vestibule.dental;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** The 52 teeth as the resource lists them. */
final class ToothTable {

  static final List<Tooth> TEETH =
      CsvTable.ofResource("teeth.csv").rows().stream()
          .map(Tooth::new)
          .sorted(Comparator.comparingInt(Tooth::iso))
          .toList();

  private ToothTable() {}

  /** The tooth whose designation equals the text, capitals or not. */
  static Optional<Tooth> find(Function<Tooth, String> designation, String text) {
    return TEETH.stream()
        .filter(tooth -> designation.apply(tooth).equalsIgnoreCase(text))
        .findFirst();
  }

  static Optional<Tooth> byIso(String digits) {
    return find(Tooth::toString, digits);
  }

  static Optional<Tooth> byUniversal(String text) {
    return find(Tooth::universal, text);
  }

  static Optional<Tooth> byPalmer(String text) {
    return find(Tooth::palmer, text);
  }
}
