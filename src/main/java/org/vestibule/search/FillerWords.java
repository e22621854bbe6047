package org.vestibule.search;

import java.util.Locale;
import java.util.Set;

/** Words whose absence changes nothing. */
final class FillerWords {

  private static final Set<String> ALL =
      Set.of(
          "the",
          "a",
          "an",
          "of",
          "and",
          "&",
          "+",
          "with",
          "for",
          "in",
          "on",
          "at",
          "by",
          "from",
          "all",
          "any",
          "show",
          "me",
          "find",
          "please",
          "photo",
          "photos",
          "photograph",
          "photographs",
          "picture",
          "pictures",
          "image",
          "images",
          "shot",
          "shots",
          "view",
          "views",
          "taken");

  private FillerWords() {}

  /** A capital A is a tooth that somebody means. */
  static boolean contains(String word) {
    return !word.equals("A") && ALL.contains(word.toLowerCase(Locale.ROOT));
  }

  static Set<String> all() {
    return ALL;
  }
}
