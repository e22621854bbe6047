package org.vestibule.words;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Locale.LanguageRange;
import java.util.Optional;

/** A language that the pages speak; each has its files of words. */
public enum Language {
  ENGLISH("en", "English"),
  GERMAN("de", "Deutsch");

  private final String tag;
  private final String ownName;

  Language(String tag, String ownName) {
    this.tag = tag;
    this.ownName = ownName;
  }

  /** As BCP 47 writes it. */
  public String tag() {
    return tag;
  }

  /** What its speakers call it. */
  public String ownName() {
    return ownName;
  }

  public Locale locale() {
    return Locale.forLanguageTag(tag);
  }

  public static Optional<Language> of(String tag) {
    return Arrays.stream(values()).filter(one -> one.tag.equals(tag)).findFirst();
  }

  /** The chosen one, else the first that the browser asks for (RFC 9110, 12.5.4), else another. */
  public static Language of(String chosen, String acceptLanguage, Language otherwise) {
    return of(chosen).orElseGet(() -> accepted(acceptLanguage, otherwise));
  }

  private static Language accepted(String header, Language otherwise) {
    if (header.isBlank() || header.length() > 200) {
      return otherwise;
    }
    try {
      List<Locale> ours = Arrays.stream(values()).map(Language::locale).toList();
      Locale best = Locale.lookup(LanguageRange.parse(header), ours);
      return best == null ? otherwise : of(best.getLanguage()).orElse(otherwise);
    } catch (IllegalArgumentException notAList) {
      return otherwise;
    }
  }
}
