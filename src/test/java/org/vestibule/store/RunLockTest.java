package org.vestibule.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.base.Outcome;

/** One run at a time writes objects; the lock ends with the process that held it. */
class RunLockTest {

  @TempDir private Path folder;
  private Path file;

  @BeforeEach
  void name() {
    file = folder.resolve("run.lock");
  }

  private Outcome<RunLock> take(String what) throws IOException {
    return RunLock.take(file, what, StoreFixture.CLOCK);
  }

  private static void assertRefused(Outcome<RunLock> second, String owner) {
    assertThat(second).isInstanceOf(Outcome.Refused.class);
    Outcome.Refused<RunLock> refused = (Outcome.Refused<RunLock>) second;
    assertThat(refused.reason())
        .matches("another run is at work: " + owner + " on \\S.* since 2026-03-14T06:00:00Z");
    assertThat(refused.advice())
        .isEqualTo("wait until it has ended, or end that process; nothing was changed");
  }

  @Test
  void aSecondHolderInTheSameProcessIsRefusedUntilTheFirstIsDone() throws IOException {
    try (RunLock first = take("ingest").orThrow()) {
      assertThat(first.interrupted()).isEmpty();
      assertRefused(take("move"), "ingest, process " + ProcessHandle.current().pid());
    }
    try (RunLock next = take("move").orThrow()) {
      assertThat(next.interrupted()).as("the first one ended as it should").isEmpty();
    }
  }

  @Test
  void whoHasNotSaidWhoItIsIsRefusedToo() throws IOException {
    try (RunLock first = take("ingest").orThrow()) {
      Files.write(file, new byte[0]);
      assertThat(take("move"))
          .isEqualTo(
              Outcome.refused(
                  Outcome.Kind.BUSY,
                  "another run is at work: it has not said which",
                  "wait until it has ended, or end that process; nothing was changed"));
      assertThat(first.interrupted()).isEmpty();
    }
  }

  @Test
  void aNameLongerThanTheLineIsCutAndStillLocks() throws IOException {
    try (RunLock first = take("ü".repeat(400)).orThrow()) {
      assertThat(first.interrupted()).isEmpty();
      assertThat(take("move")).isInstanceOf(Outcome.Refused.class);
    }
  }

  @Test
  void anotherProcessHoldsItUntilItIsKilledAndIsThenNamed() throws Exception {
    Process child =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                LockingChild.class.getName(),
                file.toString())
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve("child.txt").toFile())
            .start();
    try {
      while (!Files.exists(folder.resolve("run.lock.taken")) && child.isAlive()) {
        LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(2));
      }
      assertRefused(take("ingest"), "nightly ingest, process " + child.pid());
    } finally {
      child.destroyForcibly();
    }
    assertThat(child.waitFor(60, TimeUnit.SECONDS)).as("the child must end").isTrue();
    try (RunLock next = take("ingest").orThrow()) {
      assertThat(next.interrupted().orElseThrow())
          .startsWith("nightly ingest, process " + child.pid() + " on ");
    }
    try (RunLock later = take("ingest").orThrow()) {
      assertThat(later.interrupted()).as("it is told once").isEmpty();
    }
  }
}
