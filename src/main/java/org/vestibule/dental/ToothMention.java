package org.vestibule.dental;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.vestibule.base.Outcome;

/**
 * One tooth as it stands in a text.
 *
 * @param said the words that name it
 * @param notation the notation it is unmistakably or by default written in; empty for words
 * @param next where reading goes on
 */
record ToothMention(Tooth tooth, String said, Optional<Notation> notation, int next) {

  private static final Pattern UNIVERSAL = Pattern.compile("#(0?[1-9]|[12][0-9]|3[0-2]|[a-t])");
  private static final Pattern DOTTED = Pattern.compile("([0-9])\\.([0-9])");
  private static final Pattern PALMER = Pattern.compile("[ul][rl]\\.?([0-9]{1,2}|[a-z])");
  private static final Pattern BARE = Pattern.compile("[0-9]{1,3}|[a-z]");

  /** Box-drawing corners and the dentistry symbols of Unicode, as the quadrant they stand for. */
  private static final Map<Character, String> CORNERS =
      Map.of(
          '┘', "UR", '└', "UL", '┌', "LL", '┐', "LR", '\u23CC', "UR", '\u23BF', "UL", '\u23BE',
          "LL", '\u23CB', "LR");

  /** Reads the tooth that begins at a place in a list of words. */
  static Outcome<ToothMention> read(List<String> words, int at, Notation fallback) {
    String word = words.get(at);
    if (word.startsWith("#")) {
      return marked(UNIVERSAL.matcher(word), word, at);
    }
    Matcher dotted = DOTTED.matcher(word);
    if (dotted.matches()) {
      return found(
          ToothTable.byIso(dotted.group(1) + dotted.group(2)), word, Notation.ISO_3950, at + 1);
    }
    if (PALMER.matcher(word).matches()) {
      return found(ToothTable.byPalmer(word.replace(".", "")), word, Notation.PALMER, at + 1);
    }
    if (word.chars().anyMatch(c -> CORNERS.containsKey((char) c))) {
      return cornered(word, at);
    }
    if (BARE.matcher(word).matches()) {
      return BareNumber.read(word, fallback)
          .map(tooth -> new ToothMention(tooth, word, Optional.of(fallback), at + 1));
    }
    return ToothWords.read(words, at);
  }

  private static Outcome<ToothMention> marked(Matcher universal, String word, int at) {
    if (!universal.matches()) {
      return Outcome.refused(
          "\"" + word + "\" is not a tooth in Universal",
          "Universal runs from #1 to #32, and #A to #T for deciduous teeth");
    }
    String designation = universal.group(1).replaceFirst("^0", "");
    return found(ToothTable.byUniversal(designation), word, Notation.UNIVERSAL, at + 1);
  }

  private static Outcome<ToothMention> cornered(String word, int at) {
    if (word.length() == 2) {
      for (int corner = 0; corner < 2; corner++) {
        String quadrant = CORNERS.get(word.charAt(corner));
        if (quadrant != null) {
          String tooth = quadrant + word.substring(1 - corner, 2 - corner);
          return found(
              ToothTable.byPalmer(tooth.toUpperCase(Locale.ROOT)), word, Notation.PALMER, at + 1);
        }
      }
    }
    return Outcome.refused(
        "\"" + word + "\" is not one tooth with one quadrant corner",
        "write each tooth with its own corner, such as 6┘ (UR6) or └6 (UL6)");
  }

  private static Outcome<ToothMention> found(
      Optional<Tooth> tooth, String said, Notation notation, int next) {
    return tooth
        .map(t -> Outcome.done(new ToothMention(t, said, Optional.of(notation), next)))
        .orElseGet(
            () ->
                Outcome.refused(
                    "\"" + said + "\" is not a tooth in " + notation.words(),
                    "permanent teeth count 1 to 8 from the midline, deciduous teeth 1 to 5 (Palmer: A"
                        + " to E)"));
  }
}
