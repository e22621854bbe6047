package org.vestibule.forward;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.vestibule.forward.DestinationRules.Confirm;
import org.vestibule.forward.ScriptedArchive.Fate;
import org.vestibule.forward.ScriptedArchive.Report;
import org.vestibule.store.ledger.DeliveryRow;
import org.vestibule.store.ledger.DeliveryState;
import org.vestibule.store.steps.WriteSteps;

/**
 * A thousand objects to an archive that fails in every way there is, some objects poisoned, some
 * corrected on the way: everything that can be delivered is, and the rest is listed.
 */
class FaultyArchiveTest {

  private static final int OBJECTS = 1000;
  private static final int NIGHTS = 60;

  @TempDir private Path folder;
  private final MovingClock clock = new MovingClock();
  private final ScriptedArchive archive = new ScriptedArchive();

  @ParameterizedTest
  @EnumSource(Confirm.class)
  void everythingThatCanBeDeliveredIs(Confirm confirm) throws IOException {
    long seed = Long.getLong("vestibule.seed", 20260314L);
    System.out.println("seed " + seed);
    Random random = new Random(seed);
    try (FiledObjects filed =
        new FiledObjects(folder, clock, WriteSteps.PASS, new ObjectsInMemory())) {
      List<String> names = new ArrayList<>();
      Map<Fate, String> poisoned = new EnumMap<>(Fate.class);
      filed.ledger.together(
          () -> {
            for (int i = 0; i < OBJECTS; i++) {
              names.add("p" + i + ".jpg");
              String uid = fileQuietly(filed, names.get(i), "P" + i % 50);
              if (i % 200 == 7) {
                poisoned.put(
                    List.of(
                            Fate.REFUSED,
                            Fate.CUT_BEFORE,
                            Fate.DISK_FULL,
                            Fate.NOT_NOW,
                            Fate.CUT_AFTER)
                        .get(i / 200),
                    uid);
              }
            }
            return names;
          });
      misbehave(random, poisoned);
      Set<String> corrected = new HashSet<>();
      for (int night = 0; night < NIGHTS; night++) {
        if (night < 10) {
          String name = names.get(10 + random.nextInt(OBJECTS / 10) * 2);
          corrected.add(name);
          filed.file(name, "Q" + night);
        }
        if (night < NIGHTS - 15) {
          names.add("new" + night + ".jpg");
          filed.file("new" + night + ".jpg", "P1");
        }
        Destination to =
            new Destination(
                CourierTest.destination(confirm),
                CourierTest.rules(8),
                archive,
                filed.ledger,
                filed.objects,
                filed::note,
                "courier");
        archive.late.forEach(
            report -> Courier.reports(filed.ledger, to.all(), "door", clock, random).take(report));
        archive.late.clear();
        Courier.deliver(to, clock, random, clock.instant().plus(Duration.ofHours(2)));
        if (night % 10 == 0) {
          onlyWhatIsThereIsConfirmed(filed, names);
        }
        clock.move(Duration.ofHours(7));
      }
      everythingIsWhereItBelongs(filed, names, poisoned, corrected);
    }
  }

  private static String fileQuietly(FiledObjects filed, String name, String patient) {
    try {
      return filed.file(name, patient);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private void misbehave(Random random, Map<Fate, String> poisoned) {
    List<Fate> fates =
        List.of(
            Fate.CUT_BEFORE,
            Fate.CUT_AFTER,
            Fate.NOT_NOW,
            Fate.DISK_FULL,
            Fate.STORED_WITH_WARNING);
    archive.fates =
        uid ->
            poisoned.entrySet().stream()
                .filter(entry -> entry.getValue().equals(uid))
                .map(Map.Entry::getKey)
                .findFirst()
                .orElseGet(
                    () ->
                        random.nextInt(100) < 95
                            ? Fate.STORED
                            : fates.get(random.nextInt(fates.size())));
    archive.reachable = call -> random.nextInt(4) > 0;
    List<Report> reports =
        Stream.of(Report.values()).filter(report -> report != Report.OTHER_CLASS).toList();
    archive.reports = transaction -> reports.get(random.nextInt(reports.size()));
    archive.shows = uid -> random.nextInt(3) > 0;
  }

  private void onlyWhatIsThereIsConfirmed(FiledObjects filed, List<String> names) {
    for (String name : names) {
      for (DeliveryRow row : filed.ledger.deliveries().of(FiledObjects.hash(name))) {
        if (row.state() == DeliveryState.CONFIRMED) {
          assertThat(archive.holds).as(name).containsKey(row.sopUid());
        }
      }
    }
  }

  private void everythingIsWhereItBelongs(
      FiledObjects filed, List<String> names, Map<Fate, String> poisoned, Set<String> corrected)
      throws IOException {
    List<String> undelivered = new ArrayList<>();
    for (String name : names) {
      for (DeliveryRow row : filed.ledger.deliveries().of(FiledObjects.hash(name))) {
        boolean settled =
            row.state() == DeliveryState.CONFIRMED || row.state() == DeliveryState.WITHDRAWN;
        if (!settled && !row.takenBack()) {
          assertThat(row.isDeadEnd()).as(name + " " + row).isTrue();
          assertThat(row.words()).as(name).isNotEmpty();
          undelivered.add(String.valueOf(row.sopUid()));
        }
      }
    }
    // An object whose answer is always lost may have arrived, and is listed all the same.
    assertThat(undelivered).containsExactlyInAnyOrderElementsOf(poisoned.values());
    for (String name : corrected) {
      inOrder(filed, name);
    }
  }

  /** Of a corrected photograph: each old object, then its note, then the newest one. */
  private void inOrder(FiledObjects filed, String name) throws IOException {
    int notes = 0;
    for (DeliveryRow row : filed.ledger.deliveries().of(FiledObjects.hash(name))) {
      if (row.note()) {
        notes++;
        String note = filed.note(row.hash(), row.revision()).orThrow();
        for (DeliveryRow other : filed.ledger.deliveries().of(row.hash())) {
          if (!other.note() && other.revision() > row.revision()) {
            int first = archive.order.indexOf(other.sopUid());
            assertThat(first == -1 || first > archive.order.indexOf(note)).as(name).isTrue();
          }
        }
      }
    }
    assertThat(notes).as(name).isLessThanOrEqualTo(10);
  }
}
