package org.vestibule.cli;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.vestibule.assign.ClockCorrection;
import org.vestibule.assign.PhoneChair;
import org.vestibule.cli.SettingsValues.WrongValue;
import org.vestibule.flow.Settings.StatedCapture;
import org.vestibule.forward.DestinationRules;

/** What stands in the settings several times: captures, clocks, chairs and destinations. */
final class SettingsTables {

  private static final Pattern KEY =
      Pattern.compile("(capture|clock|chair|destination)\\[(\\d+)]\\.(.+)");
  private static final Map<String, List<String>> KEYS =
      Map.of(
          "capture", List.of("view", "camera", "mirror", "incisors", "by"),
          "clock", List.of("folder", "camera", "add-minutes", "by"),
          "chair", List.of("folder", "camera", "name"),
          "destination", DestinationSettings.KEYS);

  private final Map<String, Map<Integer, SettingsValues>> tables = new TreeMap<>();

  /** Takes an entry of one of the tables; false if it is none. */
  boolean take(TomlFile.Entry entry) {
    Matcher matcher = KEY.matcher(entry.key());
    if (!matcher.matches()
        || !KEYS.getOrDefault(matcher.group(1), List.of()).contains(matcher.group(3))) {
      return false;
    }
    tables
        .computeIfAbsent(matcher.group(1), name -> new TreeMap<>())
        .computeIfAbsent(Integer.valueOf(matcher.group(2)), number -> new SettingsValues())
        .put(matcher.group(3), entry);
    return true;
  }

  List<StatedCapture> captures() throws WrongValue {
    List<StatedCapture> captures = new ArrayList<>();
    for (SettingsValues table : all("capture")) {
      for (String key : List.of("view", "camera", "mirror", "by")) {
        require(
            table.has(key),
            "a [[capture]] lacks \"" + key + "\"",
            "a capture names view, camera, mirror and the person who states it");
      }
      captures.add(
          new StatedCapture(
              table.text("view", ""),
              table.text("camera", ""),
              table.text("mirror", ""),
              table.text("incisors", ""),
              table.text("by", "")));
    }
    return captures;
  }

  List<DestinationRules> destinations(Path home) throws WrongValue {
    return new DestinationSettings(home).read(all("destination"));
  }

  List<ClockCorrection> clocks() throws WrongValue {
    List<ClockCorrection> clocks = new ArrayList<>();
    for (SettingsValues table : all("clock")) {
      String by = table.text("by", "");
      Duration add = table.signedMinutes("add-minutes");
      require(
          !by.isBlank() && !add.isZero(),
          "a [[clock]] lacks \"add-minutes\" or \"by\"",
          "a clock names what is to be added to the phone's time, and the person who states it");
      requirePhone("clock", table);
      clocks.add(new ClockCorrection(table.text("folder", ""), table.text("camera", ""), add, by));
    }
    return clocks;
  }

  List<PhoneChair> chairs() throws WrongValue {
    List<PhoneChair> chairs = new ArrayList<>();
    for (SettingsValues table : all("chair")) {
      String name = table.text("name", "");
      require(
          !name.isBlank(),
          "a [[chair]] lacks \"name\"",
          "write the chair as the visit list writes it");
      requirePhone("chair", table);
      chairs.add(new PhoneChair(table.text("folder", ""), table.text("camera", ""), name));
    }
    return chairs;
  }

  private static void requirePhone(String name, SettingsValues table) throws WrongValue {
    require(
        !table.text("folder", "").isBlank() || !table.text("camera", "").isBlank(),
        "a [[" + name + "]] does not say which phone is meant",
        "name its folder below the inbox, or its camera as the files name it");
  }

  private static void require(boolean holds, String reason, String advice) throws WrongValue {
    if (!holds) {
      throw new WrongValue(SettingsFile.NAME + ": " + reason, advice);
    }
  }

  private List<SettingsValues> all(String name) {
    return List.copyOf(tables.getOrDefault(name, Map.of()).values());
  }
}
