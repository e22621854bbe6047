package org.vestibule.forward;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.forward.DestinationRules.Confirm;
import org.vestibule.forward.ScriptedArchive.Fate;
import org.vestibule.forward.ScriptedArchive.Report;
import org.vestibule.keys.TlsFiles;
import org.vestibule.store.ledger.DeliveryChange.Changed;
import org.vestibule.store.ledger.DeliveryRow;
import org.vestibule.store.ledger.DeliveryState;

/** One destination, every kind of answer. */
class CourierTest {

  @TempDir private Path folder;
  private final MovingClock clock = new MovingClock();
  private final ScriptedArchive archive = new ScriptedArchive();
  private final Random random = new Random(1);
  private FiledObjects filed;
  private Confirm confirm = Confirm.COMMITMENT;

  @BeforeEach
  void open() {
    filed = new FiledObjects(folder, clock);
  }

  @AfterEach
  void close() {
    filed.close();
  }

  static ForwardRules rules(int attempts) {
    return new ForwardRules(
        List.of(),
        Duration.ofMinutes(5),
        Duration.ofHours(6),
        attempts,
        Duration.ofHours(2),
        Optional.empty(),
        ForwardRules.SourceRemoval.NEVER);
  }

  static DestinationRules destination(Confirm confirm) {
    return destination("archive", confirm);
  }

  static DestinationRules destination(String name, Confirm confirm) {
    return new DestinationRules(
        name,
        true,
        new DestinationRules.Web(
            URI.create("https://archive.example"), TlsFiles.NONE, Optional.empty()),
        confirm,
        Duration.ofMinutes(10),
        Duration.ofSeconds(30));
  }

  private Destination to() {
    return new Destination(
        destination(confirm),
        rules(4),
        archive,
        filed.ledger,
        filed.objects,
        filed::note,
        "courier");
  }

  private String deliver() throws IOException {
    return Courier.deliver(to(), clock, random, clock.instant().plus(Duration.ofHours(1)))
        .map(Refused::sentence)
        .orElse("");
  }

  private String later(Duration pause) throws IOException {
    clock.move(pause);
    return deliver();
  }

  private DeliveryRow row(String name) {
    List<DeliveryRow> rows = filed.ledger.deliveries().of(FiledObjects.hash(name));
    return rows.get(rows.size() - 1);
  }

  private String said(String name) {
    DeliveryRow row = row(name);
    return row.state() + ", " + row.attempts() + ", " + row.words();
  }

  @Test
  void committedMeansConfirmed() throws IOException {
    String uid = filed.file("a.jpg", "P1");
    assertThat(deliver()).isEmpty();
    assertThat(said("a.jpg")).isEqualTo("CONFIRMED, 1, committed");
    assertThat(archive.arrivals).containsExactly(Map.entry(uid, 1));
    assertThat(archive.opened).as("one session for both").isEqualTo(1);
  }

  @Test
  void whatIsConfirmedIsNotTouchedAgain() throws IOException {
    filed.file("a.jpg", "P1");
    deliver();
    later(Duration.ofDays(1));
    assertThat(archive.opened).isEqualTo(1);
  }

  @Test
  void sentIsNotDelivered() throws IOException {
    archive.reports = transaction -> Report.LOST;
    filed.file("a.jpg", "P1");
    deliver();
    assertThat(said("a.jpg")).isEqualTo("SENT, 1, storage commitment asked for");
  }

  /** Asked for twice, then a query. */
  @Test
  void unansweredCommitmentEndsInAQuery() throws IOException {
    List<String> transactions = new ArrayList<>();
    archive.reports =
        transaction -> {
          transactions.add(transaction);
          return Report.LOST;
        };
    filed.file("a.jpg", "P1");
    deliver();
    later(Duration.ofMinutes(11));
    assertThat(archive.asked).isZero();
    later(Duration.ofMinutes(11));
    assertThat(transactions).hasSize(2).doesNotHaveDuplicates();
    assertThat(said("a.jpg")).isEqualTo("CONFIRMED, 1, shown when asked");
  }

  /** PS3.4 J.3.3: the report may come on another association. */
  @Test
  void aReportMayComeLaterAndOnAnotherConnection() throws IOException {
    archive.reports = transaction -> Report.LATER;
    filed.file("a.jpg", "P1");
    deliver();
    ReportSink sink = Courier.reports(filed.ledger, rules(4), "door", clock, new Random(2));
    assertThat(sink.take(archive.late.get(0))).isTrue();
    assertThat(sink.take(archive.late.get(0))).as("the same report again").isTrue();
    assertThat(said("a.jpg")).isEqualTo("CONFIRMED, 1, committed");
  }

  /** It will report later, and sees no reason to keep the line; meanwhile there is more to send. */
  @Test
  void anArchiveThatHangsUpOnceItWasAskedIsCalledAnew() throws IOException {
    archive.hangsUpOnceAsked = true;
    List<String> names = new ArrayList<>(List.of("a.jpg", "b.jpg", "c.jpg", "d.jpg", "e.jpg"));
    archive.reports =
        transaction -> {
          if (!names.isEmpty()) {
            fileUnchecked(names.remove(0), "P1");
          }
          return Report.LATER;
        };
    filed.file("first.jpg", "P1");
    assertThat(deliver()).as("that is nothing to complain of").isEmpty();
    assertThat(archive.arrivals).hasSize(6);
    for (String name : List.of("first.jpg", "a.jpg", "e.jpg")) {
      assertThat(said(name)).isEqualTo("SENT, 1, storage commitment asked for");
    }
  }

  @Test
  void aReportOnWhatNobodyAskedForIsNotBelieved() throws IOException {
    archive.reports = transaction -> Report.LATER;
    String uid = filed.file("a.jpg", "P1");
    deliver();
    String other = filed.file("b.jpg", "P1");
    deliver();
    ReportSink sink = Courier.reports(filed.ledger, rules(4), "door", clock, new Random(2));
    assertThat(sink.take(new CommitmentReport("2.25.7", List.of(uid), Map.of()))).isFalse();
    String first = archive.late.get(0).transactionUid();
    sink.take(new CommitmentReport(first, List.of(other), Map.of()));
    assertThat(row("a.jpg").state()).isEqualTo(DeliveryState.SENT);
    assertThat(row("b.jpg").state()).isEqualTo(DeliveryState.SENT);
    sink.take(new CommitmentReport(first, List.of(uid), Map.of(uid, 0x0110)));
    assertThat(row("a.jpg").state()).as("both at once is no yes").isEqualTo(DeliveryState.FAILED);
  }

  /** It stores, but falls over whenever it is asked for storage commitment. */
  @Test
  void anArchiveThatBreaksOffWhenAskedForCommitmentIsQueriedInTheEnd() throws IOException {
    archive.reports = transaction -> Report.BROKEN;
    filed.file("a.jpg", "P1");
    deliver();
    later(Duration.ofMinutes(30));
    assertThat(archive.asked).isZero();
    later(Duration.ofMinutes(30));
    assertThat(said("a.jpg")).isEqualTo("CONFIRMED, 1, shown when asked");
  }

  /** No answer is not the answer "not there". */
  @Test
  void aQuestionThatFailsCountsForNothing() throws IOException {
    confirm = Confirm.QUERY;
    filed.file("a.jpg", "P1");
    filed.file("b.jpg", "P1");
    archive.questions =
        number -> new PresenceAnswer.Failed(0xC001, "no answer", number % 2 == 0, Map.of(), uids());
    for (int i = 0; i < 10; i++) {
      assertThat(later(Duration.ofHours(7)))
          .isEqualTo(
              "the archive was asked what it keeps, and gave no answer: no answer: what was not"
                  + " answered is asked again by the next run");
    }
    assertThat(said("a.jpg")).isEqualTo("SENT, 1, sent, but not confirmed: no answer");
    assertThat(row("a.jpg").asks()).isZero();
    assertThat(row("a.jpg").isDeadEnd()).isFalse();
    archive.questions = number -> null;
    assertThat(later(Duration.ofHours(7))).isEmpty();
    assertThat(said("a.jpg")).isEqualTo("CONFIRMED, 1, shown when asked");
    assertThat(said("b.jpg")).isEqualTo("CONFIRMED, 1, shown when asked");
  }

  private Set<String> uids() {
    return Set.of(uid("a.jpg"), uid("b.jpg"));
  }

  /** Of three, one was shown, one was not, and at the third the archive failed. */
  @Test
  void whatWasAnsweredBeforeAQuestionFailedCounts() throws IOException {
    confirm = Confirm.QUERY;
    String shown = filed.file("a.jpg", "P1");
    filed.file("b.jpg", "P1");
    String open = filed.file("c.jpg", "P1");
    archive.questions =
        number ->
            new PresenceAnswer.Failed(-1, "no answer", true, Map.of(shown, Map.of()), Set.of(open));
    deliver();
    assertThat(said("a.jpg")).isEqualTo("CONFIRMED, 1, shown when asked");
    assertThat(said("b.jpg")).isEqualTo("SENT, 1, the archive took it but does not show it");
    assertThat(said("c.jpg")).isEqualTo("SENT, 1, sent, but not confirmed: no answer");
    assertThat(row("b.jpg").asks()).isEqualTo(1);
    assertThat(row("c.jpg").asks()).isZero();
  }

  @Test
  void whatTheArchiveSaysItHasNotIsSentAgain() throws IOException {
    archive.reports = transaction -> Report.DENIED;
    String uid = filed.file("a.jpg", "P1");
    deliver();
    assertThat(said("a.jpg")).isEqualTo("FAILED, 1, the archive does not have it (status 0112)");
    archive.reports = transaction -> Report.AT_ONCE;
    later(Duration.ofMinutes(10));
    assertThat(said("a.jpg")).isEqualTo("CONFIRMED, 2, committed");
    assertThat(archive.arrivals).containsExactly(Map.entry(uid, 2));
  }

  @Test
  void anArchiveWithoutStorageCommitmentIsAsked() throws IOException {
    archive.reports = transaction -> Report.NO_SERVICE;
    filed.file("a.jpg", "P1");
    deliver();
    assertThat(said("a.jpg")).isEqualTo("CONFIRMED, 1, shown when asked");
  }

  @Test
  void whatIsNotShownIsSentAgainAndComesToAnEnd() throws IOException {
    confirm = Confirm.QUERY;
    archive.shows = uid -> false;
    filed.file("a.jpg", "P1");
    deliver();
    assertThat(said("a.jpg")).isEqualTo("SENT, 1, the archive took it but does not show it");
    for (int i = 0; i < 40; i++) {
      later(Duration.ofHours(7));
    }
    assertThat(said("a.jpg")).isEqualTo("FAILED, 4, the archive took it but does not show it");
    assertThat(row("a.jpg").isDeadEnd()).isTrue();
  }

  @Test
  void aRefusedObjectIsNotSentAgainAndDoesNotStopTheNext() throws IOException {
    String bad = filed.file("bad.jpg", "P1");
    filed.file("good.jpg", "P1");
    archive.fates = uid -> uid.equals(bad) ? Fate.REFUSED : Fate.STORED;
    assertThat(deliver()).isEmpty();
    assertThat(said("bad.jpg"))
        .isEqualTo("REFUSED, 1, the archive can't understand the object (status C123)");
    assertThat(row("bad.jpg").isDeadEnd()).isTrue();
    assertThat(said("good.jpg")).isEqualTo("CONFIRMED, 1, committed");
  }

  @Test
  void aFullDiskOverThereEndsTheRunAndIsNoObjectsFault() throws IOException {
    for (int i = 0; i < 5; i++) {
      filed.file("p" + i + ".jpg", "P1");
    }
    archive.fates = uid -> Fate.DISK_FULL;
    String words = "the archive is out of resources (often its disk is full) (status A700)";
    assertThat(deliver()).isEqualTo(words + ": mend that there; the next run tries again");
    assertThat(archive.holds).isEmpty();
    for (int night = 0; night < 20; night++) {
      later(Duration.ofDays(1));
    }
    archive.fates = uid -> Fate.STORED;
    assertThat(later(Duration.ofDays(1))).isEmpty();
    for (int i = 0; i < 5; i++) {
      assertThat(said("p" + i + ".jpg")).isEqualTo("CONFIRMED, 1, committed");
    }
  }

  /** An object that alone is too much for the archive does not keep the others back. */
  @Test
  void oneObjectThatFindsTheDiskFullEachTimeComesToAnEnd() throws IOException {
    String huge = filed.file("huge.jpg", "P1");
    archive.fates = uid -> uid.equals(huge) ? Fate.DISK_FULL : Fate.STORED;
    for (int night = 0; night < 6; night++) {
      filed.file("night" + night + ".jpg", "P1");
      later(Duration.ofDays(1));
      assertThat(row("night" + night + ".jpg").state()).isEqualTo(DeliveryState.CONFIRMED);
    }
    assertThat(row("huge.jpg").state()).isEqualTo(DeliveryState.FAILED);
    assertThat(row("huge.jpg").isDeadEnd()).isTrue();
  }

  @Test
  void anArchiveThatIsDownCostsNoAttempt() throws IOException {
    filed.file("a.jpg", "P1");
    archive.reachable = call -> false;
    for (int night = 0; night < 20; night++) {
      assertThat(later(Duration.ofDays(1)))
          .isEqualTo("the archive does not answer: see whether it runs");
    }
    assertThat(said("a.jpg")).isEqualTo("WAITING, 0, ");
    archive.reachable = call -> true;
    later(Duration.ofDays(1));
    assertThat(said("a.jpg")).isEqualTo("CONFIRMED, 1, committed");
  }

  @Test
  void anAnswerThatIsLostIsMadeUpForBySendingAgain() throws IOException {
    String uid = filed.file("a.jpg", "P1");
    archive.fates = any -> archive.arrivals.isEmpty() ? Fate.CUT_AFTER : Fate.STORED;
    deliver();
    assertThat(said("a.jpg")).isEqualTo("FAILED, 1, the connection broke");
    assertThat(row("a.jpg").perhapsThere()).isTrue();
    later(Duration.ofMinutes(10));
    assertThat(said("a.jpg")).isEqualTo("CONFIRMED, 2, committed");
    assertThat(archive.arrivals).containsExactly(Map.entry(uid, 2));
  }

  @Test
  void pausesGrowUntilTheLastAttempt() throws IOException {
    filed.file("a.jpg", "P1");
    filed.file("b.jpg", "P1");
    String a = uid("a.jpg");
    archive.fates = uid -> uid.equals(a) ? Fate.NOT_NOW : Fate.STORED;
    List<Long> pauses = new ArrayList<>();
    deliver();
    while (row("a.jpg").dueAt() != null) {
      Duration pause = Duration.between(clock.instant(), row("a.jpg").dueAt());
      pauses.add(pause.toMinutes());
      later(pause.plusSeconds(1));
    }
    assertThat(pauses).hasSize(3);
    assertThat(pauses.get(0)).isBetween(3L, 6L);
    assertThat(pauses.get(1)).isBetween(7L, 12L);
    assertThat(pauses.get(2)).isBetween(15L, 25L);
    assertThat(said("a.jpg"))
        .isEqualTo("FAILED, 4, the archive failed while it was storing it (status 0110)");
    assertThat(row("a.jpg").isDeadEnd()).isTrue();
  }

  private String uid(String name) {
    return filed.ledger.intents().current(FiledObjects.hash(name)).get(0).sopUid();
  }

  @Test
  void whatTheArchiveChangedIsRecordedBesideWhatIsOurs() throws IOException {
    confirm = Confirm.QUERY;
    filed.file("a.jpg", "P1");
    archive.fates = uid -> Fate.STORED_WITH_WARNING;
    archive.coerces = Map.of("PatientID", "X-77");
    archive.identifiers = Map.of("PatientID", "X-77", "StudyInstanceUID", "2.25.99");
    deliver();
    assertThat(said("a.jpg")).isEqualTo("CONFIRMED, 1, shown when asked");
    DeliveryRow row = row("a.jpg");
    assertThat(filed.ledger.deliveries().coerced(row.number()))
        .containsEntry("PatientID", new Changed("P1", "X-77"))
        .containsEntry("StudyInstanceUID", new Changed(row.studyUid(), "2.25.99"))
        .hasSize(2);
    assertThat(filed.ledger.deliveries().events(row.number()).get(0).words())
        .isEqualTo("stored; the archive changed attributes (status B000)");
  }

  @Test
  void whatIsNotShownWhereItWasSentIsLookedForElsewhere() throws IOException {
    confirm = Confirm.QUERY;
    archive.shows = uid -> false;
    String uid = filed.file("a.jpg", "P1");
    archive.elsewhere = Map.of(uid, Map.of("StudyInstanceUID", "2.25.99"));
    deliver();
    assertThat(archive.sought).extracting(Sought::patientId).containsExactly("P1");
    assertThat(said("a.jpg")).isEqualTo("CONFIRMED, 1, shown when asked");
    DeliveryRow row = row("a.jpg");
    assertThat(filed.ledger.deliveries().coerced(row.number()))
        .containsExactly(Map.entry("StudyInstanceUID", new Changed(row.studyUid(), "2.25.99")));
  }

  /** While the first is asked for, another one is filed, which needs a line that holds. */
  @Test
  void aSessionThatBreaksWhileItLooksElsewhereIsNotUsedAgain() throws IOException {
    confirm = Confirm.QUERY;
    archive.breaksElsewhere = true;
    String first = filed.file("a.jpg", "P1");
    archive.shows =
        uid -> {
          if (uid.equals(first)) {
            fileUnchecked("b.jpg", "P1");
          }
          return !uid.equals(first);
        };
    deliver();
    assertThat(said("a.jpg")).isEqualTo("SENT, 1, the archive took it but does not show it");
    assertThat(said("b.jpg")).isEqualTo("CONFIRMED, 1, shown when asked");
    assertThat(archive.opened).isEqualTo(2);
  }

  @Test
  void theNoteArrivesBeforeTheNewObject() throws IOException {
    String old = filed.file("a.jpg", "P1");
    deliver();
    String now = filed.file("a.jpg", "P2");
    deliver();
    String note = filed.note(FiledObjects.hash("a.jpg"), 1).orThrow();
    assertThat(archive.order).containsExactly(old, note, now);
    assertThat(row("a.jpg").state()).isEqualTo(DeliveryState.CONFIRMED);
  }

  @Test
  void aRefusedNoteKeepsTheNewObjectBack() throws IOException {
    filed.file("a.jpg", "P1");
    deliver();
    String now = filed.file("a.jpg", "P2");
    String note = filed.note(FiledObjects.hash("a.jpg"), 1).orThrow();
    archive.fates = uid -> uid.equals(note) ? Fate.REFUSED : Fate.STORED;
    deliver();
    assertThat(archive.holds).doesNotContainKey(now);
    assertThat(row("a.jpg").behind()).isNotNull();
  }

  @Test
  void anObjectWhoseFileIsGoneIsListedAndStopsNothing() throws IOException {
    String gone = filed.file("gone.jpg", "P1");
    filed.file("b.jpg", "P1");
    Files.delete(filed.objects.path(gone).orElseThrow());
    deliver();
    assertThat(said("gone.jpg"))
        .isEqualTo("FAILED, 1, the object's file is missing here: run verify: it says what to do");
    assertThat(row("gone.jpg").perhapsThere()).isFalse();
    assertThat(row("b.jpg").state()).isEqualTo(DeliveryState.CONFIRMED);
  }

  /** A folder in its place: there, of a size, and every attempt to read it fails. */
  @Test
  void anObjectThatCannotBeReadIsListedAndStopsNothing() throws IOException {
    String unreadable = filed.file("unreadable.jpg", "P1");
    filed.file("b.jpg", "P1");
    Path path = filed.objects.path(unreadable).orElseThrow();
    Files.delete(path);
    Files.createDirectory(path);
    deliver();
    assertThat(said("unreadable.jpg"))
        .isEqualTo(
            "FAILED, 1, the object's file can't be read here: look at the disk and at who may read"
                + " that file, then run verify");
    assertThat(row("unreadable.jpg").perhapsThere()).isFalse();
    assertThat(row("b.jpg").state()).isEqualTo(DeliveryState.CONFIRMED);
  }

  @Test
  void whatTheArchiveChangedInAnObjectThatCannotBeReadStopsNothing() throws IOException {
    confirm = Confirm.QUERY;
    String uid = filed.file("a.jpg", "P1");
    archive.identifiers = Map.of("PatientID", "X-77");
    Path path = filed.objects.path(uid).orElseThrow();
    archive.shows =
        any -> {
          assertThat(path.toFile().delete() && path.toFile().mkdir()).isTrue();
          return true;
        };
    deliver();
    assertThat(said("a.jpg")).isEqualTo("CONFIRMED, 1, shown when asked");
  }

  @Test
  void aDefectOnOneObjectDoesNotStopTheOthers() throws IOException {
    String bad = filed.file("bad.jpg", "P1");
    filed.file("b.jpg", "P1");
    archive.fates =
        uid -> {
          if (uid.equals(bad)) {
            throw new IllegalStateException("words that may name a patient");
          }
          return Fate.STORED;
        };
    deliver();
    assertThat(said("bad.jpg"))
        .isEqualTo(
            "FAILED, 1, the program failed on it (IllegalStateException); please report that");
    assertThat(row("b.jpg").state()).isEqualTo(DeliveryState.CONFIRMED);
  }

  /** The archive got it when the line broke, and refuses it when it comes again. */
  @Test
  void anObjectThatMayBeThereIsTakenBackByANoteThoughItWasRefusedSince() throws IOException {
    String old = filed.file("a.jpg", "P1");
    archive.fates = any -> archive.arrivals.isEmpty() ? Fate.CUT_AFTER : Fate.REFUSED;
    deliver();
    later(Duration.ofMinutes(10));
    assertThat(row("a.jpg").state()).isEqualTo(DeliveryState.REFUSED);
    aNoteAndThenTheNewObjectFollow(old);
  }

  private void aNoteAndThenTheNewObjectFollow(String old) throws IOException {
    archive.fates = any -> Fate.STORED;
    archive.reports = transaction -> Report.AT_ONCE;
    String now = filed.file("a.jpg", "P2");
    String note = filed.note(FiledObjects.hash("a.jpg"), 1).orThrow();
    later(Duration.ofDays(1));
    assertThat(archive.order).containsExactly(old, note, now);
  }

  /** PS3.3 C.14.1.1: 0119, class and instance do not belong together there. */
  @Test
  void anObjectThatIsRefusedInTheReportIsTakenBackByANote() throws IOException {
    String old = filed.file("a.jpg", "P1");
    archive.reports = transaction -> Report.OTHER_CLASS;
    deliver();
    assertThat(said("a.jpg"))
        .isEqualTo("REFUSED, 1, the archive has it as another class of object (status 0119)");
    aNoteAndThenTheNewObjectFollow(old);
  }

  @Test
  void anObjectThatMayBeThereStaysSoWhileTheDiskOverThereIsFull() throws IOException {
    String old = filed.file("a.jpg", "P1");
    archive.fates = any -> archive.arrivals.isEmpty() ? Fate.CUT_AFTER : Fate.DISK_FULL;
    deliver();
    assertThat(filed.ledger.deliveries().again(row("a.jpg").number(), "A. Finch", "mended"))
        .isTrue();
    later(Duration.ofMinutes(10));
    for (int i = 0; i < 6; i++) {
      archive.fates = uid -> uid.equals(old) ? Fate.DISK_FULL : Fate.STORED;
      filed.file("other" + i + ".jpg", "P1");
      later(Duration.ofDays(1));
    }
    assertThat(row("a.jpg").state()).isEqualTo(DeliveryState.FAILED);
    archive.order.removeIf(uid -> !uid.equals(old));
    aNoteAndThenTheNewObjectFollow(old);
  }

  @Test
  void anObjectThatWasRefusedWhenItFirstCameNeedsNoNote() throws IOException {
    filed.file("a.jpg", "P1");
    archive.fates = any -> Fate.REFUSED;
    deliver();
    archive.fates = any -> Fate.STORED;
    String now = filed.file("a.jpg", "P2");
    deliver();
    assertThat(archive.order).containsExactly(now);
  }

  /** The second of a batch is filed anew while the first is on its way. */
  @Test
  void whatIsTakenBackWhileADeliveryIsAtWorkIsNotSent() throws IOException {
    String first = filed.file("a.jpg", "P1");
    filed.file("b.jpg", "P1");
    List<String> now = new ArrayList<>();
    archive.fates =
        uid -> {
          if (uid.equals(first)) {
            now.add(fileUnchecked("b.jpg", "P2"));
          }
          return Fate.STORED;
        };
    deliver();
    assertThat(archive.order).containsExactly(first, now.get(0));
  }

  private String fileUnchecked(String name, String patient) {
    try {
      return filed.file(name, patient);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** As when the audit message that goes before it can't be written: no object's fault. */
  @Test
  void aDiskThatFailsInTheMidstEndsTheRunAndIsNoObjectsFault() throws IOException {
    filed.file("a.jpg", "P1");
    String second = filed.file("b.jpg", "P1");
    archive.fates =
        uid -> {
          if (uid.equals(second)) {
            throw new UncheckedIOException(new IOException("no room"));
          }
          return Fate.STORED;
        };
    assertThatThrownBy(this::deliver).isInstanceOf(UncheckedIOException.class);
    assertThat(said("a.jpg")).isEqualTo("SENT, 1, ");
    assertThat(said("b.jpg")).isEqualTo("WAITING, 0, ");
    assertThat(row("b.jpg").perhapsThere()).isTrue();
  }
}
