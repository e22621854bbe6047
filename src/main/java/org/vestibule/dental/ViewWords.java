package org.vestibule.dental;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Brings the words for a view to one form: no order, no filler, one word for each meaning. */
final class ViewWords {

  private static final Map<String, String> SAME =
      CsvTable.ofResource("view-synonyms.csv").rows().stream()
          .collect(Collectors.toUnmodifiableMap(row -> row.get("word"), row -> row.get("means")));

  private ViewWords() {}

  static Set<String> tokens(String words) {
    String spelled = words.toLowerCase(Locale.ROOT).replace("3/4", "three-quarter");
    List<String> parts = Arrays.asList(spelled.split("[^\\p{L}\\p{N}]+", -1));
    return parts.stream()
        .map(word -> SAME.getOrDefault(word, word))
        .filter(word -> !word.isEmpty())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** Words that stand for another, and filler words. */
  static Set<String> synonyms() {
    return SAME.keySet();
  }
}
