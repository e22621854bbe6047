package org.vestibule.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The values of one table of the settings, each of the kind that is expected. */
final class SettingsValues {

  private static final int DAY_SECONDS = 86_400;
  private static final int DAY_MINUTES = 1_440;

  private final Map<String, TomlFile.Entry> values = new HashMap<>();

  void put(String key, TomlFile.Entry entry) {
    values.put(key, entry);
  }

  boolean has(String key) {
    return values.containsKey(key);
  }

  String text(String key, String otherwise) throws WrongValue {
    TomlFile.Entry entry = values.get(key);
    return entry == null ? otherwise : asText(entry);
  }

  List<String> texts(String key) throws WrongValue {
    TomlFile.Entry entry = values.get(key);
    List<String> texts = new ArrayList<>();
    if (entry == null) {
      return texts;
    }
    if (!entry.value().isArray()) {
      throw wrong(entry, "a list was expected", "write [\"first\", \"second\"]");
    }
    for (JsonNode item : entry.value()) {
      texts.add(item.asText());
    }
    return texts;
  }

  boolean flag(String key, boolean otherwise) throws WrongValue {
    TomlFile.Entry entry = values.get(key);
    if (entry == null) {
      return otherwise;
    }
    if (!entry.value().isBoolean()) {
      throw wrong(entry, "true or false was expected", "write true or false");
    }
    return entry.value().asBoolean();
  }

  Duration seconds(String key, Duration otherwise) throws WrongValue {
    TomlFile.Entry entry = values.get(key);
    return entry == null
        ? otherwise
        : Duration.ofSeconds(
            whole(entry, 0, DAY_SECONDS, "whole seconds from 0 to 86400 were expected", "10"));
  }

  /** Minutes, from 0 to a day. */
  Duration minutes(String key, Duration otherwise) throws WrongValue {
    TomlFile.Entry entry = values.get(key);
    return entry == null
        ? otherwise
        : Duration.ofMinutes(
            whole(entry, 0, DAY_MINUTES, "whole minutes from 0 to 1440 were expected", "10"));
  }

  /** A whole number within these limits. */
  int whole(String key, int otherwise, int least, int most) throws WrongValue {
    TomlFile.Entry entry = values.get(key);
    return entry == null
        ? otherwise
        : (int)
            whole(
                entry,
                least,
                most,
                "a whole number from " + least + " to " + most + " was expected",
                String.valueOf(otherwise));
  }

  /** A number within these limits. */
  double number(String key, double otherwise, double least, double most) throws WrongValue {
    TomlFile.Entry entry = values.get(key);
    if (entry == null) {
      return otherwise;
    }
    double value = entry.value().asDouble();
    if (!entry.value().isNumber() || !(value >= least && value <= most)) {
      throw wrong(
          entry,
          "a number from " + least + " to " + most + " was expected",
          "write for example " + otherwise);
    }
    return value;
  }

  /** Minutes that may be negative. */
  Duration signedMinutes(String key) throws WrongValue {
    TomlFile.Entry entry = values.get(key);
    return entry == null
        ? Duration.ZERO
        : Duration.ofMinutes(
            whole(
                entry,
                -Integer.MAX_VALUE,
                Integer.MAX_VALUE,
                "whole minutes were expected",
                "60, or -60 for a clock that is fast"));
  }

  private static long whole(
      TomlFile.Entry entry, long least, long most, String expected, String example)
      throws WrongValue {
    if (!entry.value().isIntegralNumber()
        || entry.value().asLong() < least
        || entry.value().asLong() > most) {
      throw wrong(entry, expected, "write for example " + example);
    }
    return entry.value().asLong();
  }

  <T> T choice(String key, T otherwise, Map<String, T> choices) throws WrongValue {
    TomlFile.Entry entry = values.get(key);
    if (entry == null) {
      return otherwise;
    }
    T chosen = choices.get(asText(entry));
    if (chosen == null) {
      throw wrong(
          entry,
          "\"" + entry.value().asText() + "\" is not a choice",
          "write one of " + String.join(", ", choices.keySet().stream().sorted().toList()));
    }
    return chosen;
  }

  ZoneId zone(String key, ZoneId otherwise) throws WrongValue {
    TomlFile.Entry entry = values.get(key);
    if (entry == null) {
      return otherwise;
    }
    try {
      return ZoneId.of(asText(entry));
    } catch (DateTimeException e) {
      throw wrong(
          entry,
          "there is no time zone \"" + entry.value().asText() + "\"",
          "write a region and a city, such as \"Europe/Vienna\"");
    }
  }

  private static String asText(TomlFile.Entry entry) throws WrongValue {
    if (!entry.value().isTextual()) {
      throw wrong(entry, "text was expected", "put the value in double quotes");
    }
    return entry.value().asText();
  }

  private static WrongValue wrong(TomlFile.Entry entry, String reason, String advice) {
    return new WrongValue(place(entry) + ": " + reason, advice);
  }

  /** Where an entry stands, for messages. */
  static String place(TomlFile.Entry entry) {
    return SettingsFile.NAME
        + (entry.line() > 0 ? ", line " + entry.line() : "")
        + ", "
        + entry.key();
  }

  /** A value that cannot be used; leaves the nested readers in one step. */
  static final class WrongValue extends Exception {
    private static final long serialVersionUID = 1L;
    final String reason;
    final String advice;

    WrongValue(String reason, String advice) {
      super(reason);
      this.reason = reason;
      this.advice = advice;
    }
  }
}
