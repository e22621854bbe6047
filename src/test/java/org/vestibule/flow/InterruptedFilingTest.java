package org.vestibule.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.assign.PersonWords;
import org.vestibule.assign.PhotoFact;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.dental.LowerArchShown;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;
import org.vestibule.samples.Scene;
import org.vestibule.store.Finding;
import org.vestibule.store.ledger.Filing;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.PhotoState;
import org.vestibule.store.steps.WriteStep;
import org.vestibule.store.steps.WriteSteps;

/** A filing that was interrupted is completed, or a person can end it; it never hangs unseen. */
class InterruptedFilingTest {

  private static final ContentHash ARCH =
      ContentHash.of(SmallPractice.photo(Scene.UPPER_OCCLUSAL, 5));

  @TempDir private Path home;

  private SmallPractice small;

  @BeforeEach
  void layOut() throws IOException {
    small = SmallPractice.layOut(home);
  }

  @Test
  void settingsChangedMeanwhileDoNotChangeWhatWasBegun() throws IOException {
    killed(WriteStep.OBJECT_NAMED, 1);
    try (Practice practice = small.open(small.changed(), WriteSteps.PASS)) {
      IngestReport report = small.ingest(practice);
      assertThat(report.filed()).extracting(FiledPhoto::name).containsExactly("a.jpg", "b.jpg");
      assertThat(report.completed()).isEqualTo(1);
      assertThat(Verify.run(practice)).isEmpty();
      DataSet begun = object(practice, "a.jpg", report);
      assertThat(begun.string(Tags.InstitutionName)).contains("Practice at the Weir");
      assertThat(begun.strings(Tags.PatientOrientation)).containsExactly("L", "A");
      DataSet later = object(practice, "b.jpg", report);
      assertThat(later.string(Tags.InstitutionName)).contains("Practice at the Old Mill");
    }
  }

  @Test
  void theSameObjectNeverHasTwoContents() throws IOException {
    LowerArchShown down = LowerArchShown.INCISORS_DOWN;
    assertThat(
            List.of(
                onlyFirstUid(small.with("A", SmallPractice.VIENNA, down)),
                onlyFirstUid(small.with("B", SmallPractice.VIENNA, down)),
                onlyFirstUid(small.with("A", ZoneId.of("Europe/Lisbon"), down)),
                onlyFirstUid(small.with("A", SmallPractice.VIENNA, LowerArchShown.INCISORS_UP))))
        .doesNotHaveDuplicates();
  }

  /** The first object's name in a fresh ledger with the same secret. */
  private String onlyFirstUid(Settings settings) throws IOException {
    for (String part : List.of("ledger.sqlite", "ledger.sqlite-wal", "ledger.sqlite-shm")) {
      Files.deleteIfExists(home.resolve(part));
    }
    try (Practice practice = small.open(settings, WriteSteps.PASS)) {
      small.ingest(practice);
      return practice.store().ledger().intents().of(ARCH).get(0).sopUid();
    }
  }

  @Test
  void aDamagedObjectIsLeftAndTheNextRevisionTakesItsPlace() throws IOException {
    killed(WriteStep.OBJECT_NAMED, 1);
    try (Practice practice = small.open()) {
      String old = practice.store().objects().list().get(0);
      Path file = practice.store().objects().path(old).orElseThrow();
      byte[] damaged = Files.readAllBytes(file);
      damaged[damaged.length / 2] ^= 1;
      Files.write(file, damaged);

      IngestReport report = small.ingest(practice);

      assertThat(report.filed()).extracting(FiledPhoto::name).containsExactly("a.jpg", "b.jpg");
      assertThat(practice.store().ledger().intents().current(ARCH))
          .extracting(Intent::revision)
          .containsExactly(2, 2);
      assertThat(file).hasBinaryContent(damaged);
      List<Finding> findings = Verify.run(practice);
      assertThat(findings).extracting(Finding::kind).containsExactly(Finding.Kind.GIVEN_UP);
      assertThat(findings.get(0).asksForAPerson()).isFalse();
      assertThat(findings.get(0).what())
          .isEqualTo(
              "object "
                  + old
                  + " belongs to a filing that was given up: another file already had the name of"
                  + " its object, and was left as it is");
      assertThat(small.ingest(practice).knownAlready()).isEqualTo(2);
    }
  }

  @Test
  void anotherRecipeBeginsTheNextRevision() throws IOException {
    killed(WriteStep.OBJECT_NAMED, 1);
    try (Practice practice = small.open()) {
      Intent open = practice.store().ledger().intents().unfinished(ARCH).get(0);
      practice.store().ledger().intents().begin(madeBefore(open), SmallPractice.WHO);
      small.ingest(practice);
      assertThat(practice.store().ledger().intents().current(ARCH))
          .extracting(Intent::revision)
          .containsExactly(3, 3);
      assertThat(Verify.run(practice)).noneMatch(Finding::asksForAPerson);
    }
  }

  /** An intent as a program of another recipe wrote it down. */
  private static Filing madeBefore(Intent open) {
    return new Filing(
        ARCH,
        open.decisionId(),
        "{}",
        "1",
        "",
        "P1",
        "V1",
        null,
        "Lumo P1",
        "",
        List.of(org.vestibule.encode.Role.FRAME, org.vestibule.encode.Role.CROP));
  }

  @Test
  void aPersonCanRejectWhatWasBegun() throws IOException {
    killed(WriteStep.OBJECT_NAMED, 1);
    try (Practice practice = small.open()) {
      String id = practice.store().ids().of(ARCH);
      assertThat(new Corrections(practice).reject(id, "Ada Example", Why.of("not ours")).orThrow())
          .isEqualTo(
              "Photograph "
                  + id
                  + " was being filed by a run that was interrupted; it will not be filed."
                  + " Its file stays where it is, untouched.");
      assertThat(state(practice)).isEqualTo(PhotoState.REJECTED);
      assertThat(small.ingest(practice).filed())
          .extracting(FiledPhoto::name)
          .containsExactly("b.jpg");
      assertThat(Verify.run(practice)).noneMatch(Finding::asksForAPerson);
    }
  }

  @Test
  void aPersonCanFileWhatWasBegun() throws IOException {
    killed(WriteStep.OBJECT_NAMED, 1);
    try (Practice practice = small.open()) {
      String id = practice.store().ids().of(ARCH);
      PersonWords words = words().with(PhotoFact.TEETH, "36");
      FiledPhoto filed = new Corrections(practice).file(id, words).orThrow();
      assertThat(filed.teeth()).contains("36");
      assertThat(filed.view()).isEqualTo("Lower occlusal");
      assertThat(state(practice)).isEqualTo(PhotoState.KEPT);
      small.ingest(practice);
      assertThat(Verify.run(practice)).noneMatch(Finding::asksForAPerson);
    }
  }

  @Test
  void aCorrectionBegunFromTheRecordIsCompletedAsItWasBegun() throws IOException {
    ingestAll();
    Files.delete(small.inbox().resolve("a.jpg"));
    killedMove();
    completesTheMove(2);
  }

  /** From the frame the same picture is written with other tables: not the object begun. */
  @Test
  void aCorrectionWhoseFileWentAwayMeanwhileIsCompletedFromTheRecord() throws IOException {
    ingestAll();
    killedMove();
    Files.delete(small.inbox().resolve("a.jpg"));
    completesTheMove(3);
  }

  private void completesTheMove(int revision) throws IOException {
    try (Practice practice = small.open()) {
      IngestReport report = small.ingest(practice);
      assertThat(report.completed()).isEqualTo(1);
      assertThat(report.unfinished()).isEmpty();
      assertThat(practice.store().ledger().intents().current(ARCH))
          .extracting(Intent::revision)
          .containsExactly(revision, revision);
      assertThat(Verify.run(practice)).noneMatch(Finding::asksForAPerson);
    }
  }

  private void killedMove() throws IOException {
    try (Practice practice = small.open(small.settings(), Death.at(WriteStep.OBJECT_NAMED, 1))) {
      String id = practice.store().ids().of(ARCH);
      PersonWords words = words().with(PhotoFact.TEETH, "36");
      assertThatThrownBy(() -> new Corrections(practice).move(id, words, Why.of("wrong tooth")))
          .isInstanceOf(Death.class);
    }
  }

  @Test
  void aPersonCanFileOrRejectWhileACorrectionWasBegun() throws IOException {
    ingestAll();
    killedMove();
    try (Practice practice = small.open()) {
      String id = practice.store().ids().of(ARCH);
      assertThat(new Corrections(practice).file(id, words()))
          .isEqualTo(Outcome.refused("this photograph is filed already", "correct it with move"));
      assertThat(new Corrections(practice).reject(id, "Ada Example", Why.of("not ours")).orThrow())
          .contains("out of search");
      assertThat(state(practice)).isEqualTo(PhotoState.REJECTED);
      small.ingest(practice);
      assertThat(Verify.run(practice)).noneMatch(Finding::asksForAPerson);
    }
  }

  @Test
  void whatCannotBeCompletedIsListedAndNeedsAPerson() throws IOException {
    killed(WriteStep.OBJECT_TEMP_CREATED, 1);
    Path file = small.inbox().resolve("a.jpg");
    byte[] bytes = Files.readAllBytes(file);
    Files.delete(file);
    Files.delete(small.inbox().resolve("c.jpg"));
    try (Practice practice = small.open()) {
      IngestReport report = small.ingest(practice);
      assertThat(report.waiting()).isEmpty();
      assertThat(report.unfinished()).extracting(WaitingPhoto::name).containsExactly("a.jpg");
      assertThat(report.unfinished().get(0).reasons())
          .extracting(WaitingPhoto.Reason::sentence)
          .containsExactly("the file of this photograph (a.jpg) is no longer where it was");
      assertThat(report.needsPerson()).isTrue();
      assertThat(new WaitingPhotos(practice).begun())
          .extracting(WaitingPhoto::name)
          .containsExactly("a.jpg");

      Files.write(file, bytes);
      IngestReport next = small.ingest(practice);
      assertThat(next.completed()).isEqualTo(1);
      assertThat(next.needsPerson()).isFalse();
    }
  }

  private void killed(WriteStep step, int time) throws IOException {
    try (Practice practice = small.open(small.settings(), Death.at(step, time))) {
      assertThatThrownBy(() -> small.ingest(practice)).isInstanceOf(Death.class);
    }
    try (Practice practice = small.open()) {
      assertThat(state(practice)).isEqualTo(PhotoState.INTENDED);
    }
  }

  private void ingestAll() throws IOException {
    try (Practice practice = small.open()) {
      assertThat(small.ingest(practice).filed()).hasSize(2);
    }
  }

  private static PersonWords words() {
    return PersonWords.by("Ada Example").with(PhotoFact.MIRROR, "as shot").seenByPerson();
  }

  private static PhotoState state(Practice practice) {
    return practice.store().ledger().photos().find(ARCH).orElseThrow().state();
  }

  private static DataSet object(Practice practice, String name, IngestReport report)
      throws IOException {
    String id =
        report.filed().stream()
            .filter(photo -> photo.name().equals(name))
            .map(FiledPhoto::id)
            .findFirst()
            .orElseThrow();
    return new KeptPhoto(practice).object(id).orThrow();
  }
}
