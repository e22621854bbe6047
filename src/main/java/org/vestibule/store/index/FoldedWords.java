package org.vestibule.store.index;

import java.text.Normalizer;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * Brings the words of names and notes to one form: lower case, without accents, only letters and
 * digits, so that "Müller" is found by "muller".
 *
 * <p>Names are also written with a vowel and an e where the other spelling has two dots or a
 * stroke; {@link #spellings} joins them, so that Müller, Mueller and Muller all find one another.
 * Rather one photograph too many is found than one too few: whose it is stands beside it.
 */
public final class FoldedWords {

  private static final Pattern MARKS = Pattern.compile("\\p{M}+");
  private static final Pattern BETWEEN = Pattern.compile("[^\\p{L}\\p{N}]+");

  private static final Pattern APOSTROPHES = Pattern.compile("['\u2019\u02BC`]");

  /** A vowel and an e that may stand for one letter: not after another vowel, as in Bauer. */
  private static final Pattern VOWEL_AND_E = Pattern.compile("(?<![aeiouy])([aou])e");

  /** Letters that have no decomposition, and how they are written without them. */
  private static final Map<String, String> STROKES =
      Map.of("ß", "ss", "ø", "o", "ł", "l", "đ", "d", "æ", "ae", "œ", "oe");

  private FoldedWords() {}

  /** A folded word, and the same with each vowel and e as the vowel alone, if that differs. */
  public static List<String> spellings(String word) {
    String one = VOWEL_AND_E.matcher(word).replaceAll("$1");
    return one.equals(word) ? List.of(word) : List.of(word, one);
  }

  /** The words of a text, in order. */
  public static List<String> of(String text) {
    String lower = APOSTROPHES.matcher(text.toLowerCase(Locale.ROOT)).replaceAll("");
    for (Map.Entry<String, String> stroke : STROKES.entrySet()) {
      lower = lower.replace(stroke.getKey(), stroke.getValue());
    }
    String plain = MARKS.matcher(Normalizer.normalize(lower, Normalizer.Form.NFKD)).replaceAll("");
    return Arrays.stream(BETWEEN.split(plain, -1)).filter(word -> !word.isEmpty()).toList();
  }
}
