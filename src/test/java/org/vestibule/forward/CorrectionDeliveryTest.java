package org.vestibule.forward;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.base.ContentHash;
import org.vestibule.forward.DestinationRules.Confirm;
import org.vestibule.forward.ScriptedArchive.Fate;
import org.vestibule.forward.ScriptedArchive.Report;
import org.vestibule.store.ledger.DeliveryRow;

/**
 * A correction on its way to several archives: to each that may have the old object, first the note
 * and then the new one; and nothing is written over anything, here or there.
 */
class CorrectionDeliveryTest {

  @TempDir private Path folder;
  private final MovingClock clock = new MovingClock();
  private final Random random = new Random(1);
  private final Map<String, ScriptedArchive> archives = new TreeMap<>();
  private FiledObjects filed;

  @BeforeEach
  void open() {
    filed = new FiledObjects(folder, clock);
  }

  @AfterEach
  void close() {
    filed.close();
  }

  private ScriptedArchive archive(String name) {
    return archives.computeIfAbsent(name, any -> new ScriptedArchive());
  }

  private void deliver(String... names) throws IOException {
    for (String name : names) {
      Destination to =
          new Destination(
              CourierTest.destination(name, Confirm.COMMITMENT),
              CourierTest.rules(4),
              archive(name),
              filed.ledger,
              filed.objects,
              filed::note,
              "courier");
      Courier.deliver(to, clock, random, clock.instant().plus(Duration.ofHours(1)));
    }
  }

  private String note(String name, int revision) throws IOException {
    return filed.note(FiledObjects.hash(name), revision).orThrow();
  }

  /** What is on its way to an archive, as "P old CONFIRMED", the first thing first. */
  private List<String> rows(String archive, String name, Map<String, String> words) {
    return filed.ledger.deliveries().of(FiledObjects.hash(name)).stream()
        .filter(row -> row.destination().equals(archive))
        .sorted(Comparator.comparingLong(DeliveryRow::number))
        .map(row -> words.getOrDefault(row.sopUid(), "?") + " " + row.state())
        .toList();
  }

  /** Confirmed, taken and not yet confirmed, perhaps taken, never sent, refused. */
  @Test
  void itGoesToEachArchiveThatMayHaveTheOldObjectAndToNoOther() throws IOException {
    String old = filed.file("a.jpg", "P1");
    archive("silent").reports = transaction -> Report.LOST;
    archive("cut").fates = uid -> Fate.CUT_AFTER;
    archive("away").reachable = call -> false;
    archive("refuses").fates = uid -> Fate.REFUSED;
    deliver("well", "silent", "cut", "away", "refuses");
    assertThat(rows("well", "a.jpg", Map.of(old, "old"))).containsExactly("old CONFIRMED");
    assertThat(rows("silent", "a.jpg", Map.of(old, "old"))).containsExactly("old SENT");
    assertThat(rows("cut", "a.jpg", Map.of(old, "old"))).containsExactly("old FAILED");
    assertThat(rows("away", "a.jpg", Map.of(old, "old"))).containsExactly("old WAITING");
    assertThat(rows("refuses", "a.jpg", Map.of(old, "old"))).containsExactly("old REFUSED");

    String now = filed.file("a.jpg", "P2");
    archives
        .values()
        .forEach(
            archive -> {
              archive.reachable = call -> true;
              archive.fates = uid -> Fate.STORED;
              archive.reports = transaction -> Report.AT_ONCE;
            });
    deliver("well", "silent", "cut", "away", "refuses");

    String note = note("a.jpg", 1);
    for (String name : List.of("well", "silent", "cut")) {
      assertThat(archive(name).order).as(name).containsExactly(old, note, now);
    }
    assertThat(archive("away").order).as("it never had the old one").containsExactly(now);
    assertThat(archive("refuses").order).as("it never took the old one").containsExactly(now);
    Map<String, String> words = Map.of(old, "old", note, "note", now, "new");
    assertThat(rows("well", "a.jpg", words))
        .containsExactly("old CONFIRMED", "note CONFIRMED", "new CONFIRMED");
    for (String name : List.of("silent", "cut")) {
      assertThat(rows(name, "a.jpg", words))
          .as(name)
          .endsWith("note CONFIRMED", "new CONFIRMED")
          .hasSize(3);
    }
    assertThat(rows("away", "a.jpg", words)).containsExactly("old WITHDRAWN", "new CONFIRMED");
  }

  /** The new object waits at that archive alone whose note is not confirmed. */
  @Test
  void aNoteThatIsNotConfirmedHoldsTheNewObjectBackAtItsOwnArchiveOnly() throws IOException {
    String old = filed.file("a.jpg", "P1");
    deliver("attic", "cellar");
    String now = filed.file("a.jpg", "P2");
    String note = note("a.jpg", 1);
    archive("cellar").reports = transaction -> Report.LOST;
    deliver("attic", "cellar");
    assertThat(archive("attic").order).containsExactly(old, note, now);
    assertThat(archive("cellar").order).containsExactly(old, note);
    Map<String, String> words = Map.of(old, "old", note, "note", now, "new");
    assertThat(rows("cellar", "a.jpg", words))
        .containsExactly("old CONFIRMED", "note SENT", "new WAITING");
    archive("cellar").reports = transaction -> Report.AT_ONCE;
    clock.move(Duration.ofMinutes(11));
    deliver("attic", "cellar");
    assertThat(archive("cellar").order).containsExactly(old, note, now);
    assertThat(rows("cellar", "a.jpg", words))
        .containsExactly("old CONFIRMED", "note CONFIRMED", "new CONFIRMED");
    assertThat(archive("attic").order).as("and nothing twice").containsExactly(old, note, now);
  }

  private Map<String, ContentHash> files() throws IOException {
    Map<String, ContentHash> all = new TreeMap<>();
    try (Stream<Path> files = Files.walk(folder.resolve("objects"))) {
      for (Path file : files.filter(Files::isRegularFile).toList()) {
        all.put(file.getFileName().toString(), ContentHash.of(Files.readAllBytes(file)));
      }
    }
    return all;
  }

  /**
   * To another patient, back, and away again, while each thing is sent twice: each filing has an
   * identifier of its own, and whatever lies here or there has the bytes that it had first. (That a
   * second arrival brings the same bytes is seen to by the scripted archive, in every test.)
   */
  @Test
  void nothingIsEverOverwrittenHereOrThere() throws IOException {
    Map<String, ContentHash> before = new TreeMap<>();
    List<String> uids = new ArrayList<>();
    for (String patient : List.of("P1", "P2", "P1", "P2")) {
      uids.add(filed.file("a.jpg", patient));
      Map<String, ContentHash> here = files();
      assertThat(here).as("objects that were here").containsAllEntriesOf(before);
      before = here;
      Set<String> cutOnce = new HashSet<>();
      archive("attic").fates = uid -> cutOnce.add(uid) ? Fate.CUT_AFTER : Fate.STORED;
      for (int run = 0; run < 4; run++) {
        deliver("attic");
        clock.move(Duration.ofMinutes(10));
      }
    }
    assertThat(uids).doesNotHaveDuplicates();
    List<String> all =
        List.of(
            uids.get(0),
            note("a.jpg", 1),
            uids.get(1),
            note("a.jpg", 2),
            uids.get(2),
            note("a.jpg", 3),
            uids.get(3));
    assertThat(all).doesNotHaveDuplicates();
    assertThat(archive("attic").order.stream().distinct()).containsExactlyElementsOf(all);
    assertThat(archive("attic").arrivals.values()).as("each was sent twice").containsOnly(2);
    for (String uid : all) {
      assertThat(archive("attic").bytes.get(uid))
          .isEqualTo(ContentHash.of(filed.objects.get(uid).orElseThrow()));
    }
  }
}
