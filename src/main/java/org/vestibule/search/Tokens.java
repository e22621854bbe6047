package org.vestibule.search;

import java.util.List;
import java.util.regex.Pattern;

/**
 * Cuts a question into words. Commas and semicolons are words of their own; {@code =16} stands for
 * a number in brackets that says a tooth again, as answers do.
 */
final class Tokens {

  static final String COMMA = ",";

  private static final String MARKS = "\"\u201C\u201D\u201E";
  private static final String AGAIN = "=";
  private static final Pattern SAID_AGAIN =
      Pattern.compile("\\(([0-9]{2})(?:(-[0-9]{2}), [0-9]+ (?:teeth|positions))?\\)");
  private static final Pattern ANY_VIEW = Pattern.compile("any of [0-9]+ views called ");
  private static final Pattern OWN_WORD = Pattern.compile("(?<=\") in a name, treatment or note");
  private static final Pattern OCCUPANT_AT =
      Pattern.compile("(?i)\\b(implant|pontic|gap)s?\\b(?: (?:at|in|on)\\b)?");
  private static final Pattern TEETH_OF = Pattern.compile("(?i)\\bteeth of the ");
  private static final Pattern SLASH = Pattern.compile("(?<=\\p{L})/(?=\\p{L})");
  private static final Pattern TRAILING = Pattern.compile("(?<=[^\\s.?!:])[.?!:]+(?=\\s|$)");

  private static final Pattern STOP = Pattern.compile("[,;]");
  private static final Pattern BRACKET = Pattern.compile("[()]");
  private static final Pattern SPACE = Pattern.compile("\\s+");

  private Tokens() {}

  static List<String> of(String words) {
    String text = SAID_AGAIN.matcher(words).replaceAll(r -> " " + AGAIN + r.group(1) + end(r));
    text = ANY_VIEW.matcher(text).replaceAll("");
    text = OWN_WORD.matcher(text).replaceAll("");
    text = OCCUPANT_AT.matcher(text).replaceAll("$1");
    text = TEETH_OF.matcher(text).replaceAll("teeth ");
    text = SLASH.matcher(text).replaceAll(" or ");
    text = TRAILING.matcher(text).replaceAll("");
    text = BRACKET.matcher(STOP.matcher(text).replaceAll(" $0 ")).replaceAll(" ");
    return SPACE.splitAsStream(text.strip()).filter(token -> !bare(token).isEmpty()).toList();
  }

  private static String end(java.util.regex.MatchResult range) {
    return range.group(2) == null ? "" : range.group(2);
  }

  /** True for a word that no phrase goes across. */
  static boolean parts(String token) {
    return token.equals(";") || token.equalsIgnoreCase("or") || token.startsWith(AGAIN);
  }

  static boolean isSeparator(String token) {
    return token.equals(COMMA) || token.equals(";");
  }

  /** The tooth numbers that are said again, or an empty text. */
  static String again(String token) {
    return token.startsWith(AGAIN) ? token.substring(AGAIN.length()) : "";
  }

  /** A word without quotation marks. */
  static String bare(String token) {
    StringBuilder bare = new StringBuilder();
    token.chars().filter(c -> MARKS.indexOf(c) < 0).forEach(c -> bare.append((char) c));
    return bare.toString();
  }

  /** How many words from this place on stand in one pair of quotation marks; at least one. */
  static int quoted(List<String> tokens, int at) {
    if (!tokens.get(at).startsWith("\"")) {
      return 1;
    }
    for (int end = at; end < tokens.size(); end++) {
      String token = tokens.get(end);
      if (token.endsWith("\"") && (end > at || token.length() > 1)) {
        return end - at + 1;
      }
    }
    return 1;
  }
}
