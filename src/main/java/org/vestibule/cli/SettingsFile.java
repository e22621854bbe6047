package org.vestibule.cli;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.MalformedInputException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.vestibule.base.Outcome;
import org.vestibule.dental.LowerArchShown;
import org.vestibule.dental.NearestWords;
import org.vestibule.dental.Notation;
import org.vestibule.flow.Settings;
import org.vestibule.flow.Settings.StatedCapture;

/** Reads {@code vestibule.toml}; what it does not say keeps its default. */
final class SettingsFile {

  static final String NAME = "vestibule.toml";

  private static final Pattern CAPTURE = Pattern.compile("capture\\[(\\d+)]\\.(.+)");
  private static final List<String> CAPTURE_KEYS =
      List.of("view", "camera", "mirror", "incisors", "by");
  private static final List<String> KEYS =
      List.of(
          "practice.id",
          "practice.name",
          "practice.zone",
          "practice.patient-ids-from",
          "practice.teeth",
          "practice.lower-arch",
          "folders.inbox",
          "folders.objects",
          "lists.visits",
          "lists.views",
          "intake.settle-seconds",
          "names.patterns",
          "names.one-export");

  private final Path home;
  private final ZoneId machineZone;
  private final Map<String, TomlFile.Entry> values = new HashMap<>();
  private final Map<Integer, Map<String, TomlFile.Entry>> captures = new TreeMap<>();

  private SettingsFile(Path home, ZoneId machineZone) {
    this.home = home;
    this.machineZone = machineZone;
  }

  /** The settings of a home folder; without a file there, the defaults. */
  static Outcome<Settings> read(Path home, ZoneId machineZone) throws IOException {
    Path file = home.resolve(NAME);
    if (!Files.exists(file)) {
      return Outcome.done(Settings.defaults(home, machineZone));
    }
    String text;
    try {
      text = Files.readString(file, StandardCharsets.UTF_8);
    } catch (MalformedInputException e) {
      return Outcome.refused(NAME + " is not UTF-8 text", "save it as UTF-8");
    }
    return TomlFile.parse(text, NAME)
        .then(toml -> new SettingsFile(home, machineZone).interpret(toml));
  }

  private Outcome<Settings> interpret(TomlFile toml) {
    for (TomlFile.Entry entry : toml.entries()) {
      Matcher capture = CAPTURE.matcher(entry.key());
      if (capture.matches() && CAPTURE_KEYS.contains(capture.group(2))) {
        captures
            .computeIfAbsent(Integer.valueOf(capture.group(1)), k -> new HashMap<>())
            .put(capture.group(2), entry);
      } else if (KEYS.contains(entry.key())) {
        values.put(entry.key(), entry);
      } else {
        return unknown(entry);
      }
    }
    try {
      return Outcome.done(settings());
    } catch (WrongValue wrong) {
      return Outcome.refused(wrong.reason, wrong.advice);
    }
  }

  private Settings settings() throws WrongValue {
    Settings base = Settings.defaults(home, machineZone);
    return new Settings(
        text("practice.id", base.practiceId()),
        text("practice.name", base.practiceName()),
        zone(),
        text("practice.patient-ids-from", base.issuer()),
        choice(
            "practice.teeth",
            base.notation(),
            Map.of(
                "iso", Notation.ISO_3950,
                "universal", Notation.UNIVERSAL,
                "palmer", Notation.PALMER)),
        choice(
            "practice.lower-arch",
            base.lowerArch(),
            Map.of(
                "incisors down", LowerArchShown.INCISORS_DOWN,
                "incisors up", LowerArchShown.INCISORS_UP)),
        home.resolve(text("folders.inbox", "inbox")),
        home.resolve(text("folders.objects", "objects")),
        home.resolve(text("lists.visits", "visits.csv")),
        home.resolve(text("lists.views", "views.csv")),
        seconds("intake.settle-seconds", base.settle()),
        texts("names.patterns"),
        flag("names.one-export", base.oneExport()),
        statedCaptures());
  }

  private Outcome<Settings> unknown(TomlFile.Entry entry) {
    List<String> near = new NearestWords(KEYS).to(entry.key(), 1);
    return Outcome.refused(
        place(entry) + ": there is no such setting",
        near.isEmpty() ? "remove the line" : "did you mean \"" + near.get(0) + "\"?");
  }

  private ZoneId zone() throws WrongValue {
    TomlFile.Entry entry = values.get("practice.zone");
    if (entry == null) {
      return machineZone;
    }
    try {
      return ZoneId.of(asText(entry));
    } catch (DateTimeException e) {
      throw new WrongValue(
          place(entry) + ": there is no time zone \"" + entry.value().asText() + "\"",
          "write a region and a city, such as \"Europe/Vienna\"");
    }
  }

  private String text(String key, String otherwise) throws WrongValue {
    TomlFile.Entry entry = values.get(key);
    return entry == null ? otherwise : asText(entry);
  }

  private List<String> texts(String key) throws WrongValue {
    TomlFile.Entry entry = values.get(key);
    List<String> texts = new ArrayList<>();
    if (entry == null) {
      return texts;
    }
    if (!entry.value().isArray()) {
      throw new WrongValue(place(entry) + ": a list was expected", "write [\"first\", \"second\"]");
    }
    for (JsonNode item : entry.value()) {
      texts.add(item.asText());
    }
    return texts;
  }

  private boolean flag(String key, boolean otherwise) throws WrongValue {
    TomlFile.Entry entry = values.get(key);
    if (entry == null) {
      return otherwise;
    }
    if (!entry.value().isBoolean()) {
      throw new WrongValue(place(entry) + ": true or false was expected", "write true or false");
    }
    return entry.value().asBoolean();
  }

  private Duration seconds(String key, Duration otherwise) throws WrongValue {
    TomlFile.Entry entry = values.get(key);
    if (entry == null) {
      return otherwise;
    }
    if (!entry.value().isIntegralNumber()
        || entry.value().asLong() < 0
        || entry.value().asLong() > 86_400) {
      throw new WrongValue(
          place(entry) + ": whole seconds from 0 to 86400 were expected", "write for example 10");
    }
    return Duration.ofSeconds(entry.value().asLong());
  }

  private <T> T choice(String key, T otherwise, Map<String, T> choices) throws WrongValue {
    TomlFile.Entry entry = values.get(key);
    if (entry == null) {
      return otherwise;
    }
    T chosen = choices.get(asText(entry));
    if (chosen == null) {
      throw new WrongValue(
          place(entry) + ": \"" + entry.value().asText() + "\" is not a choice",
          "write one of " + String.join(", ", choices.keySet().stream().sorted().toList()));
    }
    return chosen;
  }

  private List<StatedCapture> statedCaptures() throws WrongValue {
    List<StatedCapture> stated = new ArrayList<>();
    for (Map<String, TomlFile.Entry> table : captures.values()) {
      for (String key : List.of("view", "camera", "mirror", "by")) {
        if (!table.containsKey(key)) {
          throw new WrongValue(
              NAME + ": a [[capture]] lacks \"" + key + "\"",
              "a capture names view, camera, mirror and the person who states it");
        }
      }
      stated.add(
          new StatedCapture(
              captureText(table, "view"),
              captureText(table, "camera"),
              captureText(table, "mirror"),
              captureText(table, "incisors"),
              captureText(table, "by")));
    }
    return stated;
  }

  private static String captureText(Map<String, TomlFile.Entry> table, String key)
      throws WrongValue {
    TomlFile.Entry entry = table.get(key);
    return entry == null ? "" : asText(entry);
  }

  private static String asText(TomlFile.Entry entry) throws WrongValue {
    if (!entry.value().isTextual()) {
      throw new WrongValue(place(entry) + ": text was expected", "put the value in double quotes");
    }
    return entry.value().asText();
  }

  private static String place(TomlFile.Entry entry) {
    return NAME + (entry.line() > 0 ? ", line " + entry.line() : "") + ", " + entry.key();
  }

  /** A value that cannot be used; leaves the nested readers in one step. */
  private static final class WrongValue extends Exception {
    private static final long serialVersionUID = 1L;
    private final String reason;
    private final String advice;

    WrongValue(String reason, String advice) {
      super(reason);
      this.reason = reason;
      this.advice = advice;
    }
  }
}
