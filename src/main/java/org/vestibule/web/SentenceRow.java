package org.vestibule.web;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A sentence as the program says it in English, with places for what differs, and the same sentence
 * in another language with the same places.
 */
final class SentenceRow {

  private static final Pattern PLACE = Pattern.compile("\\{([a-z]*)(\\d?)}");
  private static final Map<String, String> SHAPES =
      Map.of(
          "n", "\\d[\\d.,-]*",
          "fact", "[a-z]+",
          "tooth", "[a-z][a-z ]* \\(\\d\\d\\)",
          "stage", "[a-z-]+");

  private final String english;
  private final String other;
  private final String beginning;
  private final Pattern shape;
  private final Map<Integer, String> places = new LinkedHashMap<>();

  SentenceRow(String english, String other) {
    this.english = english;
    this.other = other;
    StringBuilder pattern = new StringBuilder();
    Matcher place = PLACE.matcher(english);
    int end = 0;
    while (place.find()) {
      pattern.append(Pattern.quote(english.substring(end, place.start())));
      pattern.append('(').append(SHAPES.getOrDefault(place.group(1), "[^;]+?")).append(')');
      places.put(places.size() + 1, place.group());
      end = place.end();
    }
    this.beginning =
        english.substring(0, places.isEmpty() ? english.length() : english.indexOf('{'));
    this.shape = Pattern.compile(pattern.append(Pattern.quote(english.substring(end))).toString());
  }

  String english() {
    return english;
  }

  String other() {
    return other;
  }

  /** How many letters stand fixed in it. */
  int fixedLetters() {
    return PLACE.matcher(english).replaceAll("").length();
  }

  boolean isFixed() {
    return places.isEmpty();
  }

  /** What stands at the places of a sentence, by place; empty if it is another sentence. */
  Optional<Map<String, String>> read(String sentence) {
    if (!sentence.startsWith(beginning)) {
      return Optional.empty();
    }
    Matcher matcher = shape.matcher(sentence);
    if (!matcher.matches()) {
      return Optional.empty();
    }
    Map<String, String> found = new HashMap<>();
    places.forEach((group, place) -> found.put(place, matcher.group(group)));
    return Optional.of(found);
  }

  /** The sentence in the other language, with these values at its places. */
  String say(Map<String, String> values) {
    return PLACE
        .matcher(other)
        .replaceAll(place -> Matcher.quoteReplacement(values.getOrDefault(place.group(), "")));
  }
}
