package org.vestibule.cli;

import java.io.IOException;
import java.nio.charset.MalformedInputException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.SortingRules;
import org.vestibule.base.Outcome;
import org.vestibule.cli.SettingsValues.WrongValue;
import org.vestibule.dental.LowerArchShown;
import org.vestibule.dental.NearestWords;
import org.vestibule.dental.Notation;
import org.vestibule.flow.DoorRules;
import org.vestibule.flow.DoorRules.Identity;
import org.vestibule.flow.NightRules;
import org.vestibule.flow.Settings;
import org.vestibule.quality.QualityThresholds;
import org.vestibule.words.Language;

/** Reads {@code vestibule.toml}; what it does not say keeps its default. */
final class SettingsFile {

  static final String NAME = "vestibule.toml";

  private static final List<String> OWN_KEYS =
      List.of(
          "practice.id",
          "practice.name",
          "practice.zone",
          "practice.patient-ids-from",
          "practice.teeth",
          "practice.lower-arch",
          "practice.language",
          "practice.age-of-majority",
          "folders.inbox",
          "folders.objects",
          "lists.visits",
          "lists.views",
          "intake.settle-seconds",
          "intake.identity",
          "intake.faces-covered",
          "names.patterns",
          "names.one-export",
          "cards.opening-card-suffices",
          "cards.gaps-are-deletions",
          "cards.margin-minutes",
          "quality.zoom",
          "quality.burnt-out-percent",
          "quality.glare-percent",
          "quality.sharpness-percent",
          "quality.megapixels",
          "quality.colour-difference",
          "quality.tilt-degrees",
          "night.limit-minutes",
          "night.verify-nights",
          "night.free-megabytes",
          "night.silent-days",
          "night.backup-to",
          "night.backup-secret-to",
          "audit.on",
          "audit.source",
          "audit.site",
          "audit.server",
          "audit.port",
          "audit.line",
          "audit.trusted",
          "audit.certificate",
          "audit.key",
          "audit.password-file",
          "worklist.host",
          "worklist.port",
          "worklist.title",
          "worklist.our-title",
          "worklist.line",
          "worklist.trusted",
          "worklist.certificate",
          "worklist.key",
          "worklist.password-file",
          "worklist.station",
          "worklist.modality",
          "worklist.visit-minutes",
          "web.address",
          "web.port",
          "web.names",
          "web.tls",
          "web.certificate",
          "web.key",
          "web.password-file",
          "web.proxy-header",
          "web.idle-minutes",
          "web.longest-hours");

  private static final List<String> KEYS =
      Stream.of(OWN_KEYS, ForwardSettings.KEYS).flatMap(List::stream).toList();

  private final Path home;
  private final ZoneId machineZone;
  private final SettingsValues values = new SettingsValues();
  private final SettingsTables tables = new SettingsTables();

  private SettingsFile(Path home, ZoneId machineZone) {
    this.home = home;
    this.machineZone = machineZone;
  }

  /** The settings of a home folder; without a file there, the defaults. */
  static Outcome<Settings> read(Path home, ZoneId machineZone) throws IOException {
    return read(home, home, machineZone);
  }

  /** The settings in another folder, such as a backup's, as they would be in this home folder. */
  static Outcome<Settings> read(Path folder, Path home, ZoneId machineZone) throws IOException {
    Path file = folder.resolve(NAME);
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
      if (KEYS.contains(entry.key())) {
        values.put(entry.key(), entry);
      } else if (!tables.take(entry)) {
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
    LineSettings lines = new LineSettings(home, values);
    return new Settings(
        values.text("practice.id", base.practiceId()),
        values.text("practice.name", base.practiceName()),
        values.zone("practice.zone", machineZone),
        values.text("practice.patient-ids-from", base.issuer()),
        values.choice(
            "practice.teeth",
            base.notation(),
            Map.of(
                "iso", Notation.ISO_3950,
                "universal", Notation.UNIVERSAL,
                "palmer", Notation.PALMER)),
        values.choice(
            "practice.lower-arch",
            base.lowerArch(),
            Map.of(
                "incisors down", LowerArchShown.INCISORS_DOWN,
                "incisors up", LowerArchShown.INCISORS_UP)),
        values.choice(
            "practice.language",
            base.language(),
            Map.of("en", Language.ENGLISH, "de", Language.GERMAN)),
        home.resolve(values.text("folders.inbox", "inbox")),
        home.resolve(values.text("folders.objects", "objects")),
        home.resolve(values.text("lists.visits", "visits.csv")),
        home.resolve(values.text("lists.views", "views.csv")),
        values.seconds("intake.settle-seconds", base.settle()),
        values.texts("names.patterns"),
        values.flag("names.one-export", base.oneExport()),
        tables.captures(),
        sorting(base.sorting()),
        values.whole("practice.age-of-majority", base.ageOfMajority(), 0, 30),
        quality(base.quality()),
        night(base.night()),
        new WebSettings(home, values).read(base.web()),
        new ForwardSettings(home, values).read(tables.destinations(home)),
        lines.audit(base.audit()),
        lines.worklist(base.worklist()),
        door(base.door()));
  }

  private DoorRules door(DoorRules base) throws WrongValue {
    return new DoorRules(
        values.choice(
            "intake.identity",
            base.identity(),
            Map.of(
                "kept", Identity.KEPT,
                "removed and dates moved", Identity.DATES_MOVED,
                "removed and dates removed", Identity.NO_DATES)),
        values.flag("intake.faces-covered", base.facesCovered()));
  }

  private QualityThresholds quality(QualityThresholds base) throws WrongValue {
    return new QualityThresholds(
        values.number("quality.zoom", base.zoomRatio(), 1, 100),
        values.number("quality.burnt-out-percent", 100 * base.burntOutShare(), 0, 100) / 100,
        values.number("quality.glare-percent", 100 * base.glareShare(), 0, 100) / 100,
        values.number("quality.sharpness-percent", 100 * base.sharpnessShare(), 0, 100) / 100,
        base.seriesAtLeast(),
        values.number("quality.colour-difference", base.castDifference(), 0, 100),
        values.number("quality.megapixels", base.megapixels(), 0, 1000),
        values.number("quality.tilt-degrees", base.tiltDegrees(), 0, 45));
  }

  private NightRules night(NightRules base) throws WrongValue {
    return NightRules.of(
            values.minutes("night.limit-minutes", base.limit()),
            values.whole("night.verify-nights", base.verifyNights(), 1, 366),
            values.whole("night.free-megabytes", (int) (base.freeBytes() >> 20), 0, 10_000_000),
            values.whole("night.silent-days", base.silentDays(), 0, 366))
        .with(copying());
  }

  private NightRules.@Nullable Copying copying() throws WrongValue {
    String to = values.text("night.backup-to", "");
    String secretTo = values.text("night.backup-secret-to", "");
    if (to.isEmpty() && !secretTo.isEmpty()) {
      throw new WrongValue(
          "night.backup-secret-to says where the secret goes, but no backup is made",
          "say where the backup goes, with backup-to in [night]");
    }
    return to.isEmpty()
        ? null
        : new NightRules.Copying(
            home.resolve(to),
            secretTo.isEmpty() ? null : home.resolve(secretTo),
            VestibuleCommand.VERSION);
  }

  private SortingRules sorting(SortingRules base) throws WrongValue {
    return new SortingRules(
        values.flag("cards.opening-card-suffices", base.openingCardSuffices()),
        values.flag("cards.gaps-are-deletions", base.gapsAreDeletions()),
        values.minutes("cards.margin-minutes", base.margin()),
        tables.clocks(),
        tables.chairs());
  }

  private Outcome<Settings> unknown(TomlFile.Entry entry) {
    List<String> near = new NearestWords(KEYS).to(entry.key(), 1);
    return Outcome.refused(
        SettingsValues.place(entry) + ": there is no such setting",
        near.isEmpty() ? "remove the line" : "did you mean \"" + near.get(0) + "\"?");
  }
}
