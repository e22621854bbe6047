package org.vestibule.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.vestibule.assign.PersonWords;
import org.vestibule.assign.PhotoFact;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.flow.keeping.Backup;
import org.vestibule.flow.keeping.BackupRequest;
import org.vestibule.flow.keeping.Repair;
import org.vestibule.flow.night.Night;
import org.vestibule.flow.night.NightReport;
import org.vestibule.release.Format;
import org.vestibule.samples.Scene;
import org.vestibule.store.ledger.ConsentRow;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.LedgerCopy;
import org.vestibule.store.ledger.PhotoState;
import org.vestibule.store.ledger.ReleaseRow;
import org.vestibule.store.steps.WriteSteps;
import org.vestibule.words.Language;

/**
 * A command during which a process is killed, and what must hold once the next run is through, be
 * it with the same settings or with others.
 */
enum KillScenario {
  /** A photograph with crop and frame, one without, and one that waits. */
  INGEST {
    @Override
    void prepare(SmallPractice small) {}

    @Override
    void run(SmallPractice small, Practice practice) throws IOException {
      small.ingestOnAllProcessors(practice);
    }

    @Override
    void goOn(SmallPractice small, Practice practice) throws IOException {
      small.ingestOnAllProcessors(practice);
    }

    @Override
    void holds(Practice practice) throws IOException {
      assertThat(practice.store().ledger().kept().all()).hasSize(3);
      assertThat(practice.store().objects().list()).hasSize(3);
      assertThat(current(practice)).extracting(Intent::revision).containsExactly(1, 1);
    }
  },

  /** A photograph with crop and frame gets another tooth. */
  MOVE {
    @Override
    void prepare(SmallPractice small) throws IOException {
      ingestAll(small);
    }

    @Override
    void run(SmallPractice small, Practice practice) throws IOException {
      move(practice).orThrow();
    }

    /** The night's run completes it; where nothing was begun yet the person says it again. */
    @Override
    void goOn(SmallPractice small, Practice practice) throws IOException {
      small.ingestOnAllProcessors(practice);
      if (current(practice).get(0).revision() == 1) {
        move(practice).orThrow();
      }
    }

    @Override
    void holds(Practice practice) throws IOException {
      assertThat(practice.store().ledger().kept().all()).hasSize(5);
      assertThat(new RejectionNotes(practice).all()).isEmpty();
      assertThat(practice.store().objects().list()).hasSize(5 + 1);
      assertThat(current(practice)).extracting(Intent::revision).containsExactly(2, 2);
    }

    private Outcome<FiledPhoto> move(Practice practice) throws IOException {
      PersonWords words =
          PersonWords.by("Ada Example")
              .with(PhotoFact.TEETH, "36")
              .with(PhotoFact.MIRROR, "as shot")
              .seenByPerson();
      return new Corrections(practice).move(id(practice), words, Why.of("wrong tooth"));
    }
  },

  /** A filed photograph with crop and frame is taken out. */
  REJECT {
    @Override
    void prepare(SmallPractice small) throws IOException {
      ingestAll(small);
    }

    @Override
    void run(SmallPractice small, Practice practice) throws IOException {
      new Corrections(practice).reject(id(practice), "Ada Example", Why.of("not ours")).orThrow();
    }

    /** Said again, it is done once: now, or already before. */
    @Override
    void goOn(SmallPractice small, Practice practice) throws IOException {
      boolean before =
          practice.store().ledger().photos().find(ARCH).orElseThrow().state()
              == PhotoState.REJECTED;
      Outcome<String> again =
          new Corrections(practice).reject(id(practice), "Ada Example", Why.of("not ours"));
      assertThat(again instanceof Done<String>).isNotEqualTo(before);
      small.ingestOnAllProcessors(practice);
    }

    @Override
    void holds(Practice practice) throws IOException {
      assertThat(new RejectionNotes(practice).all()).isEmpty();
      assertThat(practice.store().objects().list()).hasSize(3 + 1);
      assertThat(current(practice)).isEmpty();
      assertThat(practice.store().ledger().corrections().of(ARCH)).hasSize(1);
    }
  },

  /** A night with eight photographs, several of them side by side, and a backup. */
  NIGHTLY {
    @Override
    void prepare(SmallPractice small) throws IOException {
      small.more(MORE);
    }

    @Override
    void run(SmallPractice small, Practice practice) throws IOException {
      night(small, practice);
    }

    @Override
    void goOn(SmallPractice small, Practice practice) throws IOException {
      assertThat(night(small, practice).copyMade().orElseThrow().failure()).isEmpty();
    }

    @Override
    void holds(Practice practice) throws IOException {
      assertThat(practice.store().ledger().kept().all()).hasSize(3 + MORE);
      assertThat(practice.store().objects().list()).hasSize(3 + MORE);
    }

    private NightReport night(SmallPractice small, Practice practice) throws IOException {
      backUp(small, practice);
      NightRules rules =
          NightRules.of(Duration.ofHours(5), 1, 0, 0)
              .with(new NightRules.Copying(small.backup(), null, "test"));
      return Night.run(practice, rules, SmallPractice.WHO, pause -> true);
    }
  },

  /** A ledger that is gone is begun again from the objects. */
  REPAIR {
    @Override
    void prepare(SmallPractice small) throws IOException {
      ingestAll(small);
      for (String lost : List.of("ledger.sqlite", "ledger.sqlite-wal", "ledger.sqlite-shm")) {
        Files.deleteIfExists(small.home().resolve(lost));
      }
    }

    @Override
    void run(SmallPractice small, Practice practice) throws IOException {
      Repair.run(practice, null, false, "Ada Example").orThrow();
    }

    @Override
    void goOn(SmallPractice small, Practice practice) throws IOException {
      run(small, practice);
      small.ingestOnAllProcessors(practice);
    }

    @Override
    void holds(Practice practice) throws IOException {
      assertThat(practice.store().ledger().kept().all()).hasSize(3);
      assertThat(practice.store().objects().list()).hasSize(3);
      assertThat(practice.store().ledger().photos().in(PhotoState.KEPT)).hasSize(2);
      assertThat(practice.store().ledger().photos().in(PhotoState.REJECTED)).hasSize(2);
    }
  },

  /** A backup: killed at seeded times, since copying has no write steps. */
  BACKUP {
    @Override
    void prepare(SmallPractice small) throws IOException {
      small.more(MORE);
      ingestAll(small);
    }

    @Override
    void run(SmallPractice small, Practice practice) throws IOException {
      backUp(small, practice);
    }

    @Override
    void goOn(SmallPractice small, Practice practice) throws IOException {
      backUp(small, practice);
      try (Stream<Path> all = Files.walk(small.backup())) {
        List<Path> files = all.filter(Files::isRegularFile).toList();
        assertThat(files).noneMatch(file -> file.toString().endsWith(".part"));
        assertThat(files.stream().filter(file -> file.toString().endsWith(".dcm")))
            .hasSize(3 + MORE);
        for (Path ledger : files) {
          if (ledger.endsWith("ledger.sqlite")) {
            assertThat(LedgerCopy.faults(ledger)).isEmpty();
          }
        }
      }
    }

    @Override
    void holds(Practice practice) throws IOException {
      assertThat(practice.store().objects().list()).hasSize(3 + MORE);
    }
  },

  /** Copies for a laboratory: killed at seeded times, since their files have no write steps. */
  RELEASE {
    @Override
    void prepare(SmallPractice small) throws IOException {
      ingestAll(small);
      try (Practice practice = small.open()) {
        LocalDate day = LocalDate.of(2026, 3, 12);
        ConsentRow consent =
            new ConsentRow(
                practice.settings().issuer(),
                "P1",
                "laboratory",
                true,
                day,
                null,
                true,
                "form 3",
                "",
                null,
                "Ada Example",
                practice.clock().instant());
        practice.store().ledger().consents().add(consent);
      }
    }

    @Override
    void run(SmallPractice small, Practice practice) throws IOException {
      make(small, practice, "copies").orThrow();
    }

    @Override
    void goOn(SmallPractice small, Practice practice) throws IOException {
      Path first = small.backup().resolveSibling(small.home().getFileName() + "-copies");
      int before = new Releasing(practice).all().size();
      assertThat(Files.exists(first) ? 1 : 0)
          .as("told before it has its name")
          .isLessThanOrEqualTo(before);
      make(small, practice, "again").orThrow();
      assertThat(new Releasing(practice).all()).hasSize(before + 1);
      small.ingestOnAllProcessors(practice);
    }

    @Override
    void holds(Practice practice) throws IOException {
      assertThat(practice.store().objects().list()).hasSize(3);
    }

    private Outcome<ReleaseRow> make(SmallPractice small, Practice practice, String name)
        throws IOException {
      String frontal =
          practice.store().ids().of(ContentHash.of(SmallPractice.photo(Scene.FRONTAL, 6)));
      return new Releasing(practice)
          .make(
              new ReleaseWords(
                  "laboratory",
                  List.of(frontal),
                  "Lab Nord",
                  "Ada Example",
                  "crown",
                  "Ada Example",
                  false,
                  Map.of(),
                  Set.of(Format.JPEG),
                  small.home().resolveSibling(small.home().getFileName() + "-" + name),
                  null,
                  Language.ENGLISH),
              "Ada Example");
    }
  };

  private static final int MORE = 5;

  /** The photograph with crop and frame. */
  static final ContentHash ARCH = ContentHash.of(SmallPractice.photo(Scene.UPPER_OCCLUSAL, 5));

  /** Ends like a process that was killed by the system. */
  static final int KILLED = 137;

  /** What was there before the command. */
  abstract void prepare(SmallPractice small) throws IOException;

  /** The command during which the process dies. */
  abstract void run(SmallPractice small, Practice practice) throws IOException;

  /** What people and the night do afterwards. */
  abstract void goOn(SmallPractice small, Practice practice) throws IOException;

  /** What must hold then, besides a sound store. */
  abstract void holds(Practice practice) throws IOException;

  /** Lays out a home folder in which the command can run. */
  void layOut(Path home) throws IOException {
    prepare(SmallPractice.layOut(Files.createDirectories(home)));
  }

  /** Runs the command in a process of its own that dies at a step, counted from 1; 0 for never. */
  int child(Path home, int step) throws IOException, InterruptedException {
    Process process = start(home, step, "");
    if (!process.waitFor(300, TimeUnit.SECONDS)) {
      process.destroyForcibly();
      throw new AssertionError("the child did not end");
    }
    return process.exitValue();
  }

  private Process start(Path home, int step, String begun) throws IOException {
    return new ProcessBuilder(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-Xshare:auto",
                "-cp",
                System.getProperty("java.class.path"),
                KilledRun.class.getName(),
                name(),
                home.toString(),
                Integer.toString(step),
                begun))
        .redirectErrorStream(true)
        .redirectOutput(home.resolve("child.txt").toFile())
        .start();
  }

  /** How the process ends, and how long its command took if it lived. */
  record Timed(int code, long nanos) {}

  /** Runs the command and kills its process so many nanoseconds after the command began. */
  Timed child(Path home, long nanos, Path begun) throws IOException, InterruptedException {
    Process process = start(home, 0, begun.toString());
    while (!Files.exists(begun) && process.isAlive()) {
      Thread.sleep(1);
    }
    long began = System.nanoTime();
    if (nanos >= 0) {
      TimeUnit.NANOSECONDS.sleep(nanos);
      process.destroyForcibly();
    }
    process.waitFor();
    return new Timed(process.exitValue(), System.nanoTime() - began);
  }

  /** Goes on after the kill and says by an error what does not hold. */
  void afterwards(Path home, boolean changed) throws IOException {
    SmallPractice small = SmallPractice.at(home);
    Settings settings = changed ? small.changed() : small.settings();
    try (Practice practice = small.open(settings, WriteSteps.PASS)) {
      goOn(small, practice);
      IngestReport quiet = small.ingestOnAllProcessors(practice);
      assertThat(quiet.filed()).isEmpty();
      assertThat(quiet.unfinished()).isEmpty();
      assertThat(quiet.defects()).isEmpty();
      assertThat(Verify.run(practice)).isEmpty();
      assertThat(new WaitingPhotos(practice).all()).hasSize(1);
      assertThat(practice.store().objects().strays()).isEmpty();
      holds(practice);
    }
    assertThat(small.inbox().resolve("a.jpg"))
        .hasBinaryContent(SmallPractice.photo(Scene.UPPER_OCCLUSAL, 5));
  }

  static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> all = Files.walk(from)) {
      for (Path file : all.toList()) {
        Files.copy(
            file,
            to.resolve(from.relativize(file).toString()),
            java.nio.file.StandardCopyOption.COPY_ATTRIBUTES);
      }
    }
  }

  private static List<Intent> current(Practice practice) {
    return practice.store().ledger().intents().current(ARCH);
  }

  private static String id(Practice practice) {
    return practice.store().ids().of(ARCH);
  }

  private static void backUp(SmallPractice small, Practice practice) throws IOException {
    BackupRequest request = new BackupRequest(small.backup(), null, true, 14, "test");
    assertThat(Backup.run(practice, request).orThrow().findings()).isEmpty();
  }

  private static void ingestAll(SmallPractice small) throws IOException {
    try (Practice practice = small.open()) {
      small.ingestOnAllProcessors(practice);
    }
  }
}
