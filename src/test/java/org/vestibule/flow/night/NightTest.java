package org.vestibule.flow.night;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.flow.NightRules;
import org.vestibule.flow.Practice;
import org.vestibule.flow.TestHome;
import org.vestibule.flow.night.NightReport.Ending;
import org.vestibule.samples.Scene;
import org.vestibule.store.RunLock;

/** A night in a small practice: what it does, how it ends, and what it tells. */
class NightTest {

  private static final NightRules EVERYTHING = NightRules.of(Duration.ofHours(5), 1, 0, 3);
  private static final Pause NEVER =
      time -> {
        throw new AssertionError("nothing to wait for");
      };

  @TempDir private Path folder;

  private TestHome home;

  @BeforeEach
  void aRoll() throws IOException {
    home = TestHome.in(folder);
    home.put("a.jpg", Scene.FRONTAL, 1);
    home.put("b.jpg", Scene.FRONTAL, 2);
    home.manifest("file,visit,view,mirror\na.jpg,V1,frontal,none\n");
    // Whoever has just copied files would have to wait for the night to take them.
    for (String name : List.of("a.jpg", "b.jpg")) {
      Files.setLastModifiedTime(
          home.inbox().resolve(name),
          java.nio.file.attribute.FileTime.from(Instant.parse("2026-03-12T12:00:00Z")));
    }
  }

  private NightReport night(NightRules rules) throws IOException {
    try (Practice practice = home.open()) {
      return Night.run(practice, rules, "nightly job", NEVER);
    }
  }

  @Test
  void takesInAndReadsAgain() throws IOException {
    NightReport report = night(EVERYTHING);
    assertThat(report.ending()).isEqualTo(Ending.NEEDS_A_PERSON);
    assertThat(report.takenIn().orElseThrow().filed()).hasSize(1);
    assertThat(report.takenIn().orElseThrow().waiting()).hasSize(1);
    assertThat(report.verified()).isEqualTo(1);
    assertThat(NightWords.lines(report))
        .containsExactly(
            "The night is done, and something needs a person.",
            "1 photograph filed, 0 of cards.",
            "1 photograph waits for a person; \"vestibule waiting\" says which, why, and what to"
                + " do.",
            "1 object read again, as the share of this night.");
  }

  @Test
  void nothingToDoIsDone() throws IOException {
    Files.delete(home.inbox().resolve("b.jpg"));
    night(EVERYTHING);
    assertThat(night(EVERYTHING).ending()).isEqualTo(Ending.DONE);
  }

  @Test
  void aDamagedObjectIsTheWorstEnding() throws IOException {
    night(EVERYTHING);
    try (Practice practice = home.open()) {
      String uid = practice.store().ledger().kept().all().toList().get(0).sopUid();
      Path object = practice.store().objects().path(uid).orElseThrow();
      byte[] bytes = Files.readAllBytes(object);
      bytes[bytes.length / 2] ^= 1;
      assertThat(object.toFile().setWritable(true)).isTrue();
      Files.write(object, bytes);
    }
    NightReport report = night(EVERYTHING);
    assertThat(report.ending()).isEqualTo(Ending.DAMAGE);
    assertThat(NightWords.lines(report).get(0))
        .isEqualTo("SOMETHING THAT IS STORED IS DAMAGED OR MISSING.");
  }

  /** Each object has its night, and none is left out. */
  @Test
  void inTheAgreedNightsEveryObjectIsReadOnce() throws IOException {
    StringBuilder manifest = new StringBuilder("file,visit,view,mirror\n");
    for (int i = 0; i < 12; i++) {
      home.put("n" + i + ".jpg", Scene.FRONTAL, 10 + i);
      manifest.append("n" + i + ".jpg,V1,frontal,none\n");
    }
    home.manifest(manifest.toString());
    home.ingest();
    Set<Instant> nights = new HashSet<>();
    int read = 0;
    for (int night = 0; night < 5; night++) {
      Instant at = Instant.parse("2026-03-15T02:00:00Z").plus(Duration.ofDays(night));
      nights.add(at);
      try (Practice practice = home.open(Clock.fixed(at, ZoneOffset.UTC))) {
        read +=
            Night.run(practice, NightRules.of(Duration.ofHours(5), 5, 0, 0), "n", NEVER).verified();
      }
    }
    assertThat(nights).hasSize(5);
    assertThat(read).isEqualTo(12);
  }

  @Test
  void anotherRunIsWaitedForThreeTimes() throws IOException {
    List<Duration> waited = new ArrayList<>();
    try (Practice practice = home.open();
        RunLock lock = practice.store().lock("somebody").orThrow()) {
      NightReport report = Night.run(practice, EVERYTHING, "nightly job", time -> waited.add(time));
      assertThat(report.ending()).isEqualTo(Ending.BUSY);
      assertThat(report.whyStopped().orElseThrow().reason()).startsWith("another run is at work");
    }
    assertThat(waited)
        .containsExactly(Duration.ofMinutes(1), Duration.ofMinutes(4), Duration.ofMinutes(10));
  }

  @Test
  void afterAnotherRunHasEndedTheNightGoesOn() throws IOException {
    try (Practice practice = home.open()) {
      RunLock lock = practice.store().lock("somebody").orThrow();
      NightReport report =
          Night.run(
              practice,
              EVERYTHING,
              "nightly job",
              time -> {
                try {
                  lock.close();
                } catch (IOException e) {
                  throw new java.io.UncheckedIOException(e);
                }
                return true;
              });
      assertThat(report.takenIn().orElseThrow().filed()).hasSize(1);
    }
  }

  /** The clock runs on by half an hour whenever it is asked; nothing is begun after the limit. */
  @Test
  void theTimeLimitLeavesTheRestForTheNextNight() throws IOException {
    try (Practice practice = home.open()) {
      NightReport report =
          Night.run(practice, NightRules.of(Duration.ZERO, 1, 0, 0), "nightly job", NEVER);
      assertThat(report.ending()).isEqualTo(Ending.NEEDS_A_PERSON);
      assertThat(report.takenIn().orElseThrow().filed()).isEmpty();
      assertThat(report.takenIn().orElseThrow().notes())
          .containsExactly("the time is up: 2 of the photographs are left for the next run.");
      assertThat(report.verified()).isZero();
    }
    assertThat(night(EVERYTHING).takenIn().orElseThrow().filed()).hasSize(1);
  }

  @Test
  void aFullDiskBeginsNothing() throws IOException {
    NightReport report = night(NightRules.of(Duration.ofHours(5), 1, Integer.MAX_VALUE, 0));
    assertThat(report.ending()).isEqualTo(Ending.MACHINE);
    assertThat(report.takenIn()).isEmpty();
    assertThat(report.whyStopped().orElseThrow().reason())
        .contains(" MB free, and " + Integer.MAX_VALUE + " MB are wanted before anything is begun");
  }

  /** With a clock that was set back, times in the ledger would run backwards. */
  @Test
  void aClockThatWasSetBackBeginsNothing() throws IOException {
    night(EVERYTHING);
    Clock back = Clock.fixed(TestHome.CLOCK.instant().minus(Duration.ofDays(1)), ZoneOffset.UTC);
    try (Practice practice = home.open(back)) {
      NightReport report = Night.run(practice, EVERYTHING, "nightly job", NEVER);
      assertThat(report.ending()).isEqualTo(Ending.MACHINE);
      assertThat(report.whyStopped().orElseThrow().advice())
          .isEqualTo("set the computer's clock; nothing was taken in");
    }
  }

  @Test
  void aPhoneThatFellSilentIsNamed() throws IOException {
    night(EVERYTHING);
    Clock later = Clock.fixed(TestHome.CLOCK.instant().plus(Duration.ofDays(7)), ZoneOffset.UTC);
    try (Practice practice = home.open(later)) {
      NightReport report = Night.run(practice, EVERYTHING, "nightly job", NEVER);
      assertThat(report.warnings())
          .containsExactly(
              "nothing has come from the phone Lumo P1 for 5 working days; check that it still"
                  + " sends its photographs");
    }
  }

  /** What waits is counted also when its file no longer lies in the inbox. */
  @Test
  void whatWaitsElsewhereIsNotForgotten() throws IOException {
    night(EVERYTHING);
    Files.delete(home.inbox().resolve("b.jpg"));
    NightReport report = night(EVERYTHING);
    assertThat(report.waiting()).isEqualTo(1);
    assertThat(report.ending()).isEqualTo(Ending.NEEDS_A_PERSON);
  }

  /** A list that contradicts the record files nothing and says so; the night must not be quiet. */
  @Test
  void aConcernNeedsAPerson() throws IOException {
    Files.delete(home.inbox().resolve("b.jpg"));
    night(EVERYTHING);
    Path visits = folder.resolve("visits.csv");
    Files.writeString(visits, Files.readString(visits).replace("Tallgrass, Orla", "Someone, Else"));
    NightReport report = night(EVERYTHING);
    assertThat(report.ending()).isEqualTo(Ending.NEEDS_A_PERSON);
    assertThat(NightWords.lines(report))
        .contains(
            "1 thing about lists, cards or files should be looked into; \"vestibule ingest\" says"
                + " what.");
  }

  /** Friday to Monday is no working day between. */
  @ParameterizedTest
  @CsvSource({
    "2026-03-13,2026-03-16,0",
    "2026-03-13,2026-03-17,1",
    "2026-03-09,2026-03-13,3",
    "2026-03-13,2026-03-13,0"
  })
  void weekendsDoNotCount(LocalDate from, LocalDate to, int days) {
    assertThat(SilentPhones.workingDays(from, to)).isEqualTo(days);
  }

  @Test
  void whatIsToldHoldsNoPatient() throws IOException {
    NightReport report = night(EVERYTHING);
    try (Practice practice = home.open()) {
      new NightFiles(home.folder()).write(report, 1, practice);
      new NightFiles(home.folder()).write(report, 1, practice);
    }
    Path night = home.folder().resolve("night");
    List<String> names;
    try (var files = Files.list(night)) {
      names = files.map(file -> file.getFileName().toString()).sorted().toList();
    }
    assertThat(names)
        .containsExactly(
            "heartbeat", "last.html", "last.txt", "log-2026-03.jsonl", "vestibule.prom");
    for (String name : names) {
      assertThat(Files.readString(night.resolve(name)))
          .as(name)
          .doesNotContain("Tallgrass")
          .doesNotContain("Orla")
          .doesNotContain("P1,")
          .doesNotContain("a.jpg")
          .doesNotContain("V1");
    }
    assertThat(Files.readAllLines(night.resolve("log-2026-03.jsonl"))).hasSize(2);
    assertThat(Files.readString(night.resolve("log-2026-03.jsonl")))
        .contains("\"ending\":\"needs_a_person\"", "\"exit\":1", "\"filed\":1", "\"waiting\":1");
    // Prometheus text format: a HELP line, a TYPE line, a sample (from memory).
    assertThat(Files.readString(night.resolve("vestibule.prom")).lines())
        .allMatch(line -> line.matches("# HELP \\w+ .+|# TYPE \\w+ gauge|vestibule_\\w+ \\d+"))
        .contains("vestibule_filed 1", "vestibule_waiting 1", "vestibule_last_run_exit_code 1");
    assertThat(Files.readString(night.resolve("heartbeat"))).endsWith(" exit 1\n");
  }
}
