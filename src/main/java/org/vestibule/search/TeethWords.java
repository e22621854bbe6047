package org.vestibule.search;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.vestibule.dental.Area;
import org.vestibule.dental.Occupant;

/**
 * Tells phrases that can't name teeth from those that may, so that not every phrase of a question
 * is read as teeth and refused with care.
 */
final class TeethWords {

  /** Kinds of teeth; alone they leave open which tooth is meant. */
  private static final Set<String> TYPES =
      Set.of(
          "first",
          "second",
          "third",
          "1st",
          "2nd",
          "3rd",
          "central",
          "incisor",
          "canine",
          "cuspid",
          "premolar",
          "bicuspid",
          "molar",
          "wisdom");

  private static final Set<String> KNOWN =
      Stream.of(
              TYPES.stream(),
              Stream.of(Area.values()).flatMap(area -> area.says().stream()),
              Stream.of(Occupant.values()).flatMap(occupant -> occupant.says().stream()),
              Stream.of(
                  "maxillary mandibular right left ur ul ll lr lateral deciduous primary baby milk"
                      + " permanent adult to through and teeth fdi iso universal palmer"))
          .flatMap(says -> says)
          .flatMap(says -> Stream.of(says.split(" ", -1)))
          .collect(Collectors.toUnmodifiableSet());

  private static final int LONGER = 5;
  private static final Pattern LETTERS = Pattern.compile("\\p{IsAlphabetic}+");

  private TeethWords() {}

  static boolean mayName(List<String> phrase) {
    return phrase.size() == 1
        ? mayNameAlone(phrase.get(0))
        : phrase.stream().allMatch(TeethWords::mayName);
  }

  /** A longer word of letters alone is no number, letter, corner or quadrant of any notation. */
  private static boolean mayNameAlone(String token) {
    return token.length() < LONGER || !LETTERS.matcher(token).matches() || mayName(token);
  }

  private static boolean mayName(String token) {
    return token.length() == 1
        || token.chars().anyMatch(Character::isDigit)
        || token.startsWith("#")
        || KNOWN.contains(Tokens.bare(token).toLowerCase(Locale.ROOT).replace(":", ""));
  }

  /** True for a kind of tooth, or several of it. */
  static boolean isType(String word) {
    String plain = word.toLowerCase(Locale.ROOT);
    return TYPES.contains(plain)
        || (plain.endsWith("s") && TYPES.contains(plain.substring(0, plain.length() - 1)));
  }
}
