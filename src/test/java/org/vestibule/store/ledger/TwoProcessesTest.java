package org.vestibule.store.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Two real processes begin one ledger at the same moment and file into the same series: nothing is
 * lost, no number is given twice, the changes hang together.
 */
class TwoProcessesTest {

  private static final int EACH = 30;

  @TempDir private Path folder;

  @Test
  void bothAreRecordedWhole() throws Exception {
    Path file = folder.resolve("ledger.sqlite");
    Path go = folder.resolve("go");
    List<Process> children = List.of(child(file, go, "one"), child(file, go, "two"));
    for (String name : List.of("one", "two")) {
      while (!Files.exists(Path.of(go + "." + name))
          && children.stream().allMatch(Process::isAlive)) {
        LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(2));
      }
    }
    Files.createFile(go);
    for (Process child : children) {
      assertThat(child.waitFor(120, TimeUnit.SECONDS)).as("the child must end").isTrue();
    }
    for (String name : List.of("one", "two")) {
      assertThat(folder.resolve(name + ".txt")).content().doesNotContain("Exception");
    }
    assertThat(children).extracting(Process::exitValue).containsExactly(0, 0);
    try (Ledger ledger = LedgerFixture.open(file)) {
      assertWhole(ledger);
    }
  }

  private Process child(Path file, Path go, String name) throws IOException {
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:+UseSerialGC",
            "-XX:TieredStopAtLevel=1",
            "-cp",
            System.getProperty("java.class.path"),
            WritingChild.class.getName(),
            file.toString(),
            go.toString(),
            name,
            Integer.toString(EACH))
        .redirectErrorStream(true)
        .redirectOutput(folder.resolve(name + ".txt").toFile())
        .start();
  }

  private static void assertWhole(Ledger ledger) {
    assertThat(ledger.faults()).isEmpty();
    assertThat(ledger.photos().in(PhotoState.KEPT)).hasSize(2 * EACH);
    assertThat(ledger.kept().all()).hasSize(2 * EACH);
    assertThat(ledger.intents().unfinished()).isEmpty();
    List<Integer> numbers = new ArrayList<>();
    for (PhotoRow photo : ledger.photos().in(PhotoState.KEPT)) {
      Intent intent = ledger.intents().current(photo.hash()).get(0);
      assertThat(intent.seriesNumber()).isEqualTo(1);
      numbers.add(intent.instanceNumber());
    }
    assertThat(numbers)
        .containsExactlyInAnyOrderElementsOf(IntStream.rangeClosed(1, 2 * EACH).boxed().toList());
    List<ChangeRow> changes = ledger.changes().after(0, 1000);
    assertThat(changes).hasSize(2 * EACH);
    assertThat(changes.get(changes.size() - 1).sequence()).isEqualTo(2 * EACH);
    assertThat(ledger.changes().firstBroken()).isEmpty();
    assertThat(ledger.events().latest(10)).as("each layout is made once").hasSize(Schema.NEWEST);
  }
}
