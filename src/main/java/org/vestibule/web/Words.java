package org.vestibule.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;

/**
 * The words of the pages in one language: {@code words/<area>_<language>.properties}, UTF-8, one
 * pair of files for each area. A key stands in one area only.
 */
final class Words {

  /** One pair of files each. */
  static final List<String> AREAS =
      List.of("common", "entry", "search", "photograph", "trade", "waiting", "phone", "share");

  private static final Map<Language, Words> ALL = new EnumMap<>(Language.class);

  static {
    for (Language language : Language.values()) {
      ALL.put(language, new Words(read(language)));
    }
  }

  private final Map<String, String> words;

  private Words(Map<String, String> words) {
    this.words = Map.copyOf(words);
  }

  static Words of(Language language) {
    Words words = ALL.get(language);
    if (words == null) {
      throw new IllegalStateException("there are no words of " + language);
    }
    return words;
  }

  private static Map<String, String> read(Language language) {
    Map<String, String> all = new HashMap<>();
    for (String area : AREAS) {
      read(area, language)
          .forEach(
              (key, value) -> {
                if (all.put(key, value) != null) {
                  throw new IllegalStateException("the word " + key + " stands in two areas");
                }
              });
    }
    return all;
  }

  /** The words of one area by key. */
  static Map<String, String> read(String area, Language language) {
    String name = "words/" + area + "_" + language.tag() + ".properties";
    Properties properties = new Properties();
    try (InputStream in = Words.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its resource " + name);
      }
      properties.load(new InputStreamReader(in, StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    Map<String, String> words = new HashMap<>();
    properties.stringPropertyNames().forEach(key -> words.put(key, properties.getProperty(key)));
    return words;
  }

  /** All of them by key, for templates. */
  Map<String, String> all() {
    return words;
  }

  /**
   * A word or sentence.
   *
   * @param values for {@code {0}}, {@code {1}} and so on
   */
  String say(String key, Object... values) {
    String text =
        find(key).orElseThrow(() -> new IllegalStateException("no words for the key " + key));
    for (int at = 0; at < values.length; at++) {
      text = text.replace("{" + at + "}", String.valueOf(values[at]));
    }
    return text;
  }

  /** The word, if there is one. */
  Optional<String> find(String key) {
    return Optional.ofNullable(words.get(key));
  }

  /** A sentence about a number: the key with {@code -one} for 1, with {@code -many} otherwise. */
  String count(String key, int number) {
    return say(key + (number == 1 ? "-one" : "-many"), number);
  }
}
