package org.vestibule.words;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;

/**
 * Words and sentences in one language, by key. They stand in files {@code
 * <name>_<language>.properties}, UTF-8, one for each language.
 */
public final class Words {

  private final Map<String, String> words;

  private Words(Map<String, String> words) {
    this.words = Map.copyOf(words);
  }

  /** The trade's words, which are the same on pages, cards and sheets. */
  public static Words trade(Language language) {
    return read(Words.class, "trade", language);
  }

  /**
   * The words of one file.
   *
   * @param beside a class in whose package the file lies
   * @param name of the file from there, without language and ending
   */
  public static Words read(Class<?> beside, String name, Language language) {
    String file = name + "_" + language.tag() + ".properties";
    Properties properties = new Properties();
    try (InputStream in = beside.getResourceAsStream(file)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its resource " + file);
      }
      properties.load(new InputStreamReader(in, StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    Map<String, String> words = new HashMap<>();
    properties.stringPropertyNames().forEach(key -> words.put(key, properties.getProperty(key)));
    return new Words(words);
  }

  /** These and others; a key stands in one file only. */
  public Words and(Words others) {
    Map<String, String> all = new HashMap<>(words);
    others.words.forEach(
        (key, value) -> {
          if (all.put(key, value) != null) {
            throw new IllegalStateException("the word " + key + " stands in two files");
          }
        });
    return new Words(all);
  }

  /** All of them by key, for templates. */
  public Map<String, String> all() {
    return words;
  }

  /**
   * A word or sentence.
   *
   * @param values for {@code {0}}, {@code {1}} and so on
   */
  public String say(String key, Object... values) {
    String text =
        find(key).orElseThrow(() -> new IllegalStateException("no words for the key " + key));
    for (int at = 0; at < values.length; at++) {
      text = text.replace("{" + at + "}", String.valueOf(values[at]));
    }
    return text;
  }

  /** The word, if there is one. */
  public Optional<String> find(String key) {
    return Optional.ofNullable(words.get(key));
  }

  /** A sentence about a number: the key with {@code -one} for 1, with {@code -many} otherwise. */
  public String count(String key, int number) {
    return say(key + (number == 1 ? "-one" : "-many"), number);
  }
}
