package org.vestibule.web;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.vestibule.words.Language;
import org.vestibule.words.Words;

/**
 * The words of the pages in one language: {@code words/<area>_<language>.properties}, one pair of
 * files for each area, and the trade's words. A key stands in one area only.
 */
final class PageWords {

  /** One pair of files each. */
  static final List<String> AREAS =
      List.of("common", "entry", "search", "photograph", "waiting", "phone", "share");

  private static final Map<Language, Words> ALL = new EnumMap<>(Language.class);

  static {
    for (Language language : Language.values()) {
      Words words = Words.trade(language);
      for (String area : AREAS) {
        words = words.and(Words.read(PageWords.class, "words/" + area, language));
      }
      ALL.put(language, words);
    }
  }

  private PageWords() {}

  static Words of(Language language) {
    Words words = ALL.get(language);
    if (words == null) {
      throw new IllegalStateException("there are no words of " + language);
    }
    return words;
  }
}
