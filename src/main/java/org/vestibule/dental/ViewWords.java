package org.vestibule.dental;

import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Brings the words for a view to one form: no order, no filler, one word for each meaning. */
final class ViewWords {

  private static final Pattern BETWEEN_WORDS = Pattern.compile("[^\\p{L}\\p{N}]+");
  private static final Map<String, String> SAME =
      CsvTable.ofResource("view-synonyms.csv").rows().stream()
          .collect(Collectors.toUnmodifiableMap(row -> row.get("word"), row -> row.get("means")));

  private ViewWords() {}

  static Set<String> tokens(String words) {
    String spelled = words.toLowerCase(Locale.ROOT).replace("3/4", "three-quarter");
    return BETWEEN_WORDS
        .splitAsStream(spelled)
        .map(word -> SAME.getOrDefault(word, word))
        .filter(word -> !word.isEmpty())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** Words that stand for another, and filler words. */
  static Set<String> synonyms() {
    return SAME.keySet();
  }
}
