package org.vestibule.dental;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A text about teeth cut into items (separated by comma, semicolon, "and", "&amp;", "+"), each a
 * list of lower-case words with ranges marked by {@code -}. A notation named at the start is taken
 * off.
 */
record TeethTokens(Optional<Notation> named, List<List<String>> items) {

  private static final String DASH = "-";
  private static final Pattern TOKEN =
      Pattern.compile(
          "[,;&+\\n]|[-\u2010-\u2015\u2212]|#\\s*[0-9a-z]+|[^\\s,;&+\u2010-\u2015\u2212-]+");
  private static final Pattern DASHES = Pattern.compile("[-\u2010-\u2015\u2212]");
  private static final Set<String> SEPARATORS = Set.of(",", ";", "&", "+", "\n", "and");
  private static final Set<String> RANGE_WORDS = Set.of("to", "through");

  static TeethTokens of(String text) {
    List<String> tokens = new ArrayList<>();
    Matcher matcher = TOKEN.matcher(text.toLowerCase(Locale.ROOT));
    while (matcher.find()) {
      tokens.add(clean(matcher.group()));
    }
    Optional<Notation> named = takeNotation(tokens);
    List<List<String>> items = new ArrayList<>();
    List<String> item = new ArrayList<>();
    for (String token : tokens) {
      if (SEPARATORS.contains(token)) {
        items.add(List.copyOf(item));
        item.clear();
      } else {
        item.add(token);
      }
    }
    items.add(List.copyOf(item));
    return new TeethTokens(named, items.stream().filter(words -> !words.isEmpty()).toList());
  }

  private static String clean(String token) {
    if (token.length() == 1 && DASHES.matcher(token).matches()) {
      return DASH;
    }
    if (RANGE_WORDS.contains(token)) {
      return DASH;
    }
    return token.startsWith("#") ? token.replaceAll("\\s", "") : token;
  }

  private static Optional<Notation> takeNotation(List<String> tokens) {
    if (tokens.isEmpty()) {
      return Optional.empty();
    }
    Optional<Notation> named =
        switch (tokens.get(0).replace(":", "")) {
          case "fdi", "iso" -> Optional.of(Notation.ISO_3950);
          case "universal" -> Optional.of(Notation.UNIVERSAL);
          case "palmer" -> Optional.of(Notation.PALMER);
          default -> Optional.empty();
        };
    if (named.isPresent()) {
      tokens.remove(0);
      if (!tokens.isEmpty() && tokens.get(0).replace(":", "").equals("3950")) {
        tokens.remove(0);
      }
    }
    return named;
  }
}
