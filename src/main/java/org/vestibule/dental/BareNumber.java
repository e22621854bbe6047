package org.vestibule.dental;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.vestibule.base.Outcome;

/**
 * A number or letter without any mark, which means different teeth in different notations: it is
 * read by the default alone, or refused with every reading it could have.
 */
final class BareNumber {

  private BareNumber() {}

  static Outcome<Tooth> read(String bare, Notation fallback) {
    Optional<Tooth> tooth =
        switch (fallback) {
          case ISO_3950 -> ToothTable.byIso(bare);
          case UNIVERSAL -> ToothTable.byUniversal(bare);
          case PALMER -> Optional.<Tooth>empty();
        };
    if (tooth.isPresent()) {
      return Outcome.done(tooth.get());
    }
    List<String> readings = readings(bare);
    String reason = "\"" + bare + "\" is not a tooth as " + fallback.words() + " writes it";
    return readings.isEmpty()
        ? Outcome.refused(
            reason + ", nor in any other notation", "check the number, or name the tooth in words")
        : Outcome.refused(reason + "; it could be " + String.join("; or ", readings), advice(bare));
  }

  private static String advice(String bare) {
    List<String> ways = new ArrayList<>();
    isoLike(bare).ifPresent(tooth -> ways.add("FDI " + tooth));
    Area.byIso(bare).ifPresent(area -> ways.add("\"" + area.words() + "\""));
    universalLike(bare).ifPresent(tooth -> ways.add("#" + tooth.universal()));
    List<Tooth> palmer = palmerLike(bare);
    if (!palmer.isEmpty()) {
      ways.add(palmer.get(0).palmer() + " (or UL, LL, LR)");
    }
    return "say which is meant: write " + String.join(", or ", ways);
  }

  /** Everything a bare number could mean in some notation, in words. */
  private static List<String> readings(String bare) {
    List<String> readings = new ArrayList<>();
    isoLike(bare)
        .ifPresent(
            tooth -> readings.add(tooth.wordsAndNumber() + " in " + Notation.ISO_3950.words()));
    Area.byIso(bare)
        .ifPresent(area -> readings.add(area.words() + " in " + Notation.ISO_3950.words()));
    universalLike(bare)
        .ifPresent(
            tooth -> readings.add(tooth.wordsAndNumber() + " in " + Notation.UNIVERSAL.words()));
    List<Tooth> palmer = palmerLike(bare);
    if (!palmer.isEmpty()) {
      readings.add(
          palmer.get(0).type()
              + " of an unnamed quadrant in Palmer ("
              + palmer.stream().map(Tooth::toString).collect(Collectors.joining(", "))
              + ")");
    }
    return readings;
  }

  private static Optional<Tooth> isoLike(String bare) {
    return ToothTable.byIso(bare);
  }

  private static Optional<Tooth> universalLike(String bare) {
    return ToothTable.byUniversal(bare.replaceFirst("^0(?=.)", ""));
  }

  private static List<Tooth> palmerLike(String bare) {
    return Tooth.all().stream()
        .filter(tooth -> tooth.palmer().substring(2).equalsIgnoreCase(bare))
        .toList();
  }
}
