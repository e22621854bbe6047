package org.vestibule.web;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.text.DecimalFormatSymbols;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.vestibule.flow.look.Say;
import org.vestibule.words.Language;
import org.vestibule.words.TradeWords;
import org.vestibule.words.Words;

/**
 * What the rooms behind the pages say, in the language of a page: {@code sentences/<language>.txt}.
 * The rooms speak English, and the ledger keeps what they said; so the English words are what a
 * sentence is found by. One that the language's file lacks stays English, and is marked as such.
 */
final class Sentences {

  /**
   * A sentence.
   *
   * @param language its tag, for a screen reader
   */
  record Said(String words, String language) {

    /** The same with a capital at its start and a full stop at its end. */
    Said sentence() {
      boolean asks = words.endsWith("?");
      return new Said(asks ? Say.capital(words) : Say.sentence(words), language);
    }
  }

  private static final Map<Language, List<SentenceRow>> ALL = new EnumMap<>(Language.class);

  static {
    for (Language language : Language.values()) {
      ALL.put(language, language == Language.ENGLISH ? List.of() : read(language));
    }
  }

  private static final String LIST = ", ";

  private final Language language;
  private final TradeWords trade;
  private final Words words;

  Sentences(Language language, TradeWords trade) {
    this.language = language;
    this.trade = trade;
    this.words = PageWords.of(language);
  }

  /** In the language of whoever asks. */
  static Sentences of(Asked asked, Site site) {
    Words words = PageWords.of(asked.language());
    return new Sentences(asked.language(), new TradeWords(words, site.practice().views()));
  }

  static List<SentenceRow> rows(Language language) {
    return ALL.getOrDefault(language, List.of());
  }

  private static List<SentenceRow> read(Language language) {
    String name = "sentences/" + language.tag() + ".txt";
    try (InputStream in = Sentences.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its resource " + name);
      }
      BufferedReader lines = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8));
      return rows(lines.lines().filter(line -> !line.isEmpty() && !line.startsWith("# ")).toList());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<SentenceRow> rows(List<String> lines) {
    List<SentenceRow> rows = new ArrayList<>();
    for (int at = 0; at + 1 < lines.size(); at += 2) {
      String other = lines.get(at + 1);
      if (!other.startsWith("= ")) {
        throw new IllegalStateException("no translation stands below: " + lines.get(at));
      }
      rows.add(new SentenceRow(lines.get(at), other.substring(2)));
    }
    // What differs nowhere is looked for first: it is certain; then what says the most itself.
    rows.sort(
        Comparator.comparing(SentenceRow::isFixed)
            .thenComparing(SentenceRow::fixedLetters)
            .reversed());
    return List.copyOf(rows);
  }

  /** The sentence in this language, or as it is. */
  Said say(String english) {
    if (language == Language.ENGLISH) {
      return new Said(english, language.tag());
    }
    return find(english)
        .or(() -> each(english, "; "))
        .map(found -> new Said(found, language.tag()))
        .orElseGet(() -> new Said(english, Language.ENGLISH.tag()));
  }

  /**
   * What was found and what to do, as sentences for a template: {@code sentence}, {@code advice}
   * and in which language each is, {@code spoken} and {@code spoken-advice}.
   */
  Map<String, Object> model(String found, String toDo) {
    return model(say(found), say(toDo));
  }

  /** The same of words that a page says itself. */
  Map<String, Object> own(String found, String toDo) {
    return model(new Said(found, language.tag()), new Said(toDo, language.tag()));
  }

  private static Map<String, Object> model(Said found, Said toDo) {
    Said sentence = found.sentence();
    Said advice = toDo.sentence();
    return new HashMap<>(
        Map.of(
            "sentence", sentence.words(),
            "spoken", sentence.language(),
            "advice", advice.words(),
            "spoken-advice", advice.language()));
  }

  /** Several sentences in one line, which may be lists themselves, if all of them are known. */
  private Optional<String> each(String english, String between) {
    List<Optional<String>> all =
        Arrays.stream(english.split(Pattern.quote(between)))
            .map(
                part ->
                    find(part).or(() -> between.equals(LIST) ? Optional.empty() : each(part, LIST)))
            .toList();
    return all.stream().allMatch(Optional::isPresent)
        ? Optional.of(all.stream().map(Optional::orElseThrow).collect(Collectors.joining(between)))
        : Optional.empty();
  }

  private Optional<String> find(String english) {
    return rows(language).stream().flatMap(row -> said(row, english).stream()).findFirst();
  }

  private Optional<String> said(SentenceRow row, String english) {
    Optional<Map<String, String>> read = row.read(english);
    if (read.isEmpty()) {
      return Optional.empty();
    }
    Map<String, String> values = new HashMap<>();
    for (Map.Entry<String, String> place : read.get().entrySet()) {
      Optional<String> value = value(place.getKey(), place.getValue());
      if (value.isEmpty()) {
        return Optional.empty();
      }
      values.put(place.getKey(), value.get());
    }
    return Optional.of(row.say(values));
  }

  private Optional<String> value(String place, String english) {
    String kind = place.replaceAll("[{}\\d]", "");
    return switch (kind) {
      case "view" -> Optional.of(trade.viewNamed(english));
      case "stage" -> Optional.of(trade.stage(english));
      case "fact" -> words.find("what-" + english);
      case "area" -> words.find("area-" + english.replace(' ', '-'));
      case "tooth" -> trade.toothNamed(english);
      case "said" -> find(english);
      case "n" -> Optional.of(number(english));
      default -> Optional.of(english);
    };
  }

  /** A number with the language's decimal sign; a day stays as it is. */
  private String number(String english) {
    char sign = DecimalFormatSymbols.getInstance(language.locale()).getDecimalSeparator();
    return english.matches("\\d+\\.\\d+") ? english.replace('.', sign) : english;
  }
}
