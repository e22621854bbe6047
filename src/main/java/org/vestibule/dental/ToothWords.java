package org.vestibule.dental;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.vestibule.base.Outcome;

/**
 * Reads a tooth named in words: "upper right first molar", "upper right 6", "UR 6", "lower left
 * second primary molar".
 */
final class ToothWords {

  private static final Map<String, Arch> ARCHES =
      Map.of(
          "upper",
          Arch.UPPER,
          "maxillary",
          Arch.UPPER,
          "lower",
          Arch.LOWER,
          "mandibular",
          Arch.LOWER);
  private static final Map<String, Side> SIDES = Map.of("right", Side.RIGHT, "left", Side.LEFT);
  private static final Set<String> QUADRANTS = Set.of("ur", "ul", "ll", "lr");
  private static final Set<String> DECIDUOUS = Set.of("deciduous", "primary", "baby", "milk");
  private static final Set<String> PERMANENT = Set.of("permanent", "adult");
  private static final Map<String, String> SAME =
      Map.of(
          "1st",
          "first",
          "2nd",
          "second",
          "3rd",
          "third",
          "cuspid",
          "canine",
          "bicuspid",
          "premolar",
          "wisdom",
          "third molar");
  private static final Set<String> TYPE_WORDS =
      Set.of(
          "central",
          "lateral",
          "incisor",
          "canine",
          "first",
          "second",
          "third",
          "premolar",
          "molar",
          "third molar");
  private static final Pattern COUNT = Pattern.compile("[0-9]{1,2}|[a-z]");

  private final List<String> words;
  private final int from;
  private int at;
  private boolean deciduous;
  private boolean permanent;

  private ToothWords(List<String> words, int from) {
    this.words = words;
    this.from = from;
    this.at = from;
  }

  static Outcome<ToothMention> read(List<String> words, int at) {
    return new ToothWords(words, at).read();
  }

  private Outcome<ToothMention> read() {
    Optional<String> quadrant = quadrant();
    if (quadrant.isEmpty()) {
      return Outcome.refused(
          "\"" + words.get(from) + "\" is not understood as a tooth or an area",
          Known.NEAREST.suggestion(words.get(from), EXAMPLES));
    }
    boolean quadrantLetters = at == from + 1;
    dentition();
    if (at < words.size() && COUNT.matcher(words.get(at)).matches()) {
      String count = words.get(at++);
      String letter = deciduous && count.matches("[1-5]") ? letterOf(count) : count;
      return found(ToothTable.byPalmer(quadrant.get() + letter), Optional.of(Notation.PALMER));
    }
    if (quadrantLetters) {
      return incomplete();
    }
    return found(byType(quadrant.get()), Optional.empty());
  }

  private static String letterOf(String count) {
    return String.valueOf((char) ('A' + count.charAt(0) - '1'));
  }

  private Outcome<ToothMention> found(Optional<Tooth> tooth, Optional<Notation> notation) {
    String said = String.join(" ", words.subList(from, at));
    if (tooth.isEmpty()) {
      return at < words.size() || notation.isPresent()
          ? Outcome.refused("\"" + said + "\" names no tooth", ADVICE)
          : incomplete();
    }
    if ((deciduous && !tooth.get().deciduous()) || (permanent && tooth.get().deciduous())) {
      return Outcome.refused(
          "\"" + said + "\" contradicts itself: that would be " + tooth.get().wordsAndNumber(),
          ADVICE);
    }
    return Outcome.done(new ToothMention(tooth.get(), said, notation, at));
  }

  /** Made once, when a word is first refused. */
  private static final class Known {
    private static final NearestWords NEAREST = new NearestWords(vocabulary());
  }

  private static Set<String> vocabulary() {
    Set<String> known = new TreeSet<>(ARCHES.keySet());
    known.addAll(SIDES.keySet());
    Stream.of(Occupant.values()).forEach(occupant -> known.addAll(occupant.says()));
    Stream.of(Area.values()).forEach(area -> known.addAll(area.says()));
    return known;
  }

  private static final String EXAMPLES =
      "write teeth as 16, 1.6, UR6, #3 or \"upper right first molar\", areas as \"upper arch\" or"
          + " \"upper right quadrant\"";
  private static final String ADVICE =
      "name quadrant and tooth, such as \"upper right first molar\", \"upper right 6\" or \"upper"
          + " right deciduous second molar\"";

  private Outcome<ToothMention> incomplete() {
    return Outcome.refused(
        "\"" + String.join(" ", words.subList(from, at)) + "\" does not say which tooth",
        "add the tooth, such as \"upper right 6\", or \"quadrant\" or \"sextant\" for an area");
  }

  /** Reads "ur", or "upper right" in either order, and gives the Palmer letters. */
  private Optional<String> quadrant() {
    String first = words.get(at);
    if (QUADRANTS.contains(first)) {
      at++;
      return Optional.of(first);
    }
    if (at + 1 >= words.size()) {
      return Optional.empty();
    }
    String second = words.get(at + 1);
    Arch arch = ARCHES.getOrDefault(first, ARCHES.get(second));
    Side side = SIDES.getOrDefault(second, SIDES.get(first));
    if (arch == null || side == null) {
      return Optional.empty();
    }
    at += 2;
    return Optional.of((arch == Arch.UPPER ? "u" : "l") + (side == Side.RIGHT ? "r" : "l"));
  }

  private void dentition() {
    while (at < words.size()
        && (DECIDUOUS.contains(words.get(at)) || PERMANENT.contains(words.get(at)))) {
      deciduous |= DECIDUOUS.contains(words.get(at));
      permanent |= PERMANENT.contains(words.get(at));
      at++;
    }
  }

  private Optional<Tooth> byType(String quadrant) {
    StringBuilder type = new StringBuilder();
    while (at < words.size() && TYPE_WORDS.contains(same(words.get(at)))) {
      type.append(type.length() == 0 ? "" : " ").append(same(words.get(at)));
      at++;
      dentition();
    }
    String wanted = type.toString();
    return Tooth.all().stream()
        .filter(tooth -> tooth.palmer().substring(0, 2).equalsIgnoreCase(quadrant))
        .filter(tooth -> tooth.deciduous() == deciduous)
        .filter(tooth -> tooth.type().equals(wanted) || tooth.type().equals(wanted + " incisor"))
        .findFirst();
  }

  private static String same(String word) {
    return SAME.getOrDefault(word, word);
  }
}
