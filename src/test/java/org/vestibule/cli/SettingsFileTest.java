package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.assign.ClockCorrection;
import org.vestibule.assign.PhoneChair;
import org.vestibule.assign.SortingRules;
import org.vestibule.audit.AuditRules;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.dental.LowerArchShown;
import org.vestibule.dental.Notation;
import org.vestibule.flow.NightRules;
import org.vestibule.flow.Settings;
import org.vestibule.forward.worklist.WorklistRules;
import org.vestibule.keys.TlsFiles;
import org.vestibule.quality.QualityThresholds;
import org.vestibule.words.Language;

class SettingsFileTest {

  private static final ZoneId MACHINE = ZoneId.of("Europe/Lisbon");

  @TempDir private Path home;

  @Test
  void nothingConfiguredStillWorks() throws IOException {
    assertThat(SettingsFile.read(home, MACHINE).orThrow())
        .isEqualTo(Settings.defaults(home, MACHINE));
  }

  @Test
  void readsEverySetting() throws IOException {
    Settings settings =
        read("""
                [practice]
                id = "mill"
                name = "Practice at the Old Mill"
                zone = "Europe/Vienna"
                patient-ids-from = "MILL"
                teeth = "universal"
                lower-arch = "incisors up"
                age-of-majority = 16
                [folders]
                inbox = "roll"
                [intake]
                settle-seconds = 0
                [names]
                patterns = ["{patient}/*"]
                one-export = false
                [[capture]]
                view = "upper-occlusal"
                camera = "Lumo P1"
                mirror = "as shot"
                incisors = "top"
                by = "Dr. Ada Example"
                [cards]
                opening-card-suffices = true
                gaps-are-deletions = true
                margin-minutes = 5
                [quality]
                zoom = 3.5
                burnt-out-percent = 2
                glare-percent = 0.5
                sharpness-percent = 40
                megapixels = 8
                colour-difference = 2.5
                tilt-degrees = 4
                [night]
                limit-minutes = 60
                verify-nights = 7
                free-megabytes = 5
                silent-days = 0
                backup-to = "/mnt/backup"
                backup-secret-to = "safe"
                [audit]
                on = true
                source = "desk"
                site = "Old Mill"
                server = "audit.example"
                line = "tls"
                trusted = "audit.pem"
                [worklist]
                host = "worklist.example"
                port = 11112
                title = "WORKLIST"
                our-title = "DESK"
                line = "plain"
                station = "CHAIR1"
                modality = ""
                visit-minutes = 30
                [[clock]]
                camera = "Lumo P1"
                add-minutes = -60
                by = "Dr. Ada Example"
                """)
            .orThrow();
    assertThat(settings.night().backup().to()).isEqualTo(Path.of("/mnt/backup"));
    assertThat(settings.night().backup().secretTo()).endsWithRaw(Path.of("safe"));
    assertThat(settings.practiceName()).isEqualTo("Practice at the Old Mill");
    assertThat(settings.zone()).isEqualTo(ZoneId.of("Europe/Vienna"));
    assertThat(settings.issuer()).isEqualTo("MILL");
    assertThat(settings.notation()).isEqualTo(Notation.UNIVERSAL);
    assertThat(settings.lowerArch()).isEqualTo(LowerArchShown.INCISORS_UP);
    assertThat(settings.inbox()).isEqualTo(home.resolve("roll"));
    assertThat(settings.objects()).isEqualTo(home.resolve("objects"));
    assertThat(settings.settle()).isEqualTo(Duration.ZERO);
    assertThat(settings.namePatterns()).containsExactly("{patient}/*");
    assertThat(settings.oneExport()).isFalse();
    assertThat(settings.captures())
        .isEqualTo(
            List.of(
                new Settings.StatedCapture(
                    "upper-occlusal", "Lumo P1", "as shot", "top", "Dr. Ada Example")));
    assertThat(settings.sorting())
        .isEqualTo(
            new SortingRules(
                true,
                true,
                Duration.ofMinutes(5),
                List.of(
                    new ClockCorrection("", "Lumo P1", Duration.ofHours(-1), "Dr. Ada Example")),
                List.of()));
    assertThat(settings.ageOfMajority()).isEqualTo(16);
    assertThat(settings.quality())
        .isEqualTo(new QualityThresholds(3.5, 0.02, 0.005, 0.4, 2, 2.5, 8, 4));
    assertThat(settings.night().with(null)).isEqualTo(NightRules.of(Duration.ofHours(1), 7, 5, 0));
    assertThat(settings.audit())
        .isEqualTo(
            new AuditRules(
                true,
                "desk",
                "Old Mill",
                Optional.of(
                    new AuditRules.Syslog(
                        "audit.example",
                        6514,
                        Optional.of(
                            new TlsFiles(
                                Optional.empty(),
                                Optional.empty(),
                                Optional.empty(),
                                Optional.of(home.resolve("audit.pem"))))))));
    assertThat(settings.worklist())
        .isEqualTo(
            new WorklistRules(
                "worklist.example",
                11112,
                "WORKLIST",
                "DESK",
                Optional.empty(),
                "CHAIR1",
                "",
                Duration.ofMinutes(30)));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "[audit]~server = \"x\"| vestibule.toml: [audit] names a server, but \"on\" is not true: write on = true, or leave the server out",
        "[worklist]~host = \"x\"| vestibule.toml: [worklist] lacks \"host\" or \"title\": name both, as the worklist's administrator gave them",
        "[practice]~zon = \"x\"| vestibule.toml, line 2, practice.zon: there is no such setting: did you mean \"practice.zone\"?",
        "[practice]~~zone = \"Mars\"| vestibule.toml, line 3, practice.zone: there is no time zone \"Mars\": write a region and a city, such as \"Europe/Vienna\"",
        "[practice]~teeth = \"adult\"| vestibule.toml, line 2, practice.teeth: \"adult\" is not a choice: write one of iso, palmer, universal",
        "[practice]~name = 5| vestibule.toml, line 2, practice.name: text was expected: put the value in double quotes",
        "[intake]~settle-seconds = -1| vestibule.toml, line 2, intake.settle-seconds: whole seconds from 0 to 86400 were expected: write for example 10",
        "[names]~one-export = \"no\"| vestibule.toml, line 2, names.one-export: true or false was expected: write true or false",
        "[names]~patterns = \"x\"| vestibule.toml, line 2, names.patterns: a list was expected: write [\"first\", \"second\"]",
        "[cards]~margin-minutes = 1441| vestibule.toml, line 2, cards.margin-minutes: whole minutes from 0 to 1440 were expected: write for example 10",
        "[[clock]]~folder = \"a\"~add-minutes = 60| vestibule.toml: a [[clock]] lacks \"add-minutes\" or \"by\": a clock names what is to be added to the phone's time, and the person who states it",
        "[[clock]]~add-minutes = 60~by = \"Ada\"| vestibule.toml: a [[clock]] does not say which phone is meant: name its folder below the inbox, or its camera as the files name it",
        "[[chair]]~folder = \"a\"| vestibule.toml: a [[chair]] lacks \"name\": write the chair as the visit list writes it",
        "[quality]~zoom = 0.5| vestibule.toml, line 2, quality.zoom: a number from 1.0 to 100.0 was expected: write for example 2.0",
        "[night]~verify-nights = 0| vestibule.toml, line 2, night.verify-nights: a whole number from 1 to 366 was expected: write for example 28",
        "[[capture]]~view = \"upper-occlusal\"| vestibule.toml: a [[capture]] lacks \"camera\": a capture names view, camera, mirror and the person who states it"
      })
  void refusesByLineAndKey(String text, String sentence) throws IOException {
    Outcome<Settings> outcome = read(text.replace("~", "\n"));
    assertThat(outcome).isInstanceOf(Refused.class);
    assertThat(((Refused<Settings>) outcome).sentence()).isEqualTo(sentence);
  }

  @Test
  void refusesWhatIsNotTomlByLine() throws IOException {
    Outcome<Settings> outcome = read("[practice]\nname = Old Mill\n");
    assertThat(((Refused<Settings>) outcome).reason())
        .startsWith("vestibule.toml, line 2: not TOML: ");
  }

  @Test
  void theTemplateNamesEverySettingWithItsDefault() throws IOException {
    String template =
        new String(
            Objects.requireNonNull(SettingsFile.class.getResourceAsStream("vestibule.toml"))
                .readAllBytes(),
            StandardCharsets.UTF_8);
    String switchedOn =
        template
            .replaceAll("(?m)^# (?=[a-z-]+ = )", "")
            .replaceAll("(?m)^# (?=\\[\\[)", "")
            .replace("zone = \"Europe/Vienna\"", "zone = \"Europe/Lisbon\"");
    Settings settings = read(switchedOn).orThrow();
    assertThat(settings.captures()).hasSize(1);
    assertThat(settings.sorting())
        .isEqualTo(
            new SortingRules(
                false,
                false,
                Duration.ZERO,
                List.of(new ClockCorrection("phone-1", "", Duration.ofHours(1), "Dr. Ada Example")),
                List.of(new PhoneChair("phone-1", "", "Chair 1"))));
    Settings base = Settings.defaults(home, MACHINE);
    assertThat(settings.forward().destinations()).hasSize(1);
    assertThat(settings.forward())
        .usingRecursiveComparison()
        .ignoringFields("destinations")
        .isEqualTo(base.forward());
    assertThat(
            new Settings(
                settings.practiceId(),
                settings.practiceName(),
                settings.zone(),
                settings.issuer(),
                settings.notation(),
                settings.lowerArch(),
                Language.ENGLISH,
                settings.inbox(),
                settings.objects(),
                settings.visits(),
                settings.views(),
                settings.settle(),
                settings.namePatterns(),
                settings.oneExport(),
                List.of(),
                SortingRules.STRICT,
                settings.ageOfMajority(),
                settings.quality(),
                settings.night(),
                settings.web(),
                base.forward(),
                settings.audit(),
                settings.worklist(),
                settings.door()))
        .isEqualTo(base);
    assertThat(read(template).orThrow()).isEqualTo(base);
  }

  private Outcome<Settings> read(String text) throws IOException {
    Files.writeString(home.resolve(SettingsFile.NAME), text, StandardCharsets.UTF_8);
    return SettingsFile.read(home, MACHINE);
  }
}
