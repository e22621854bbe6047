package org.vestibule.store.index;

import java.text.Normalizer;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * Brings the words of names and notes to one form: lower case, without accents, only letters and
 * digits, so that "Müller" is found by "muller".
 */
public final class FoldedWords {

  private static final Pattern MARKS = Pattern.compile("\\p{M}+");
  private static final Pattern BETWEEN = Pattern.compile("[^\\p{L}\\p{N}]+");

  private FoldedWords() {}

  /** The words of a text, in order. */
  public static List<String> of(String text) {
    String lower = text.toLowerCase(Locale.ROOT).replace("ß", "ss").replace("'", "");
    String plain = MARKS.matcher(Normalizer.normalize(lower, Normalizer.Form.NFKD)).replaceAll("");
    return Arrays.stream(BETWEEN.split(plain, -1)).filter(word -> !word.isEmpty()).toList();
  }
}
