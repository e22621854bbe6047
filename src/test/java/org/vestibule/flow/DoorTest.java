package org.vestibule.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;
import org.vestibule.assign.PersonWords;
import org.vestibule.assign.PhotoFact;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.check.CheckReport;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Part10Reader;
import org.vestibule.dicom.Tags;
import org.vestibule.flow.DoorRules.Identity;
import org.vestibule.samples.Scene;
import org.vestibule.store.Finding;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.NoteRow;
import org.vestibule.store.steps.WriteStep;
import org.vestibule.store.steps.WriteSteps;

/** Objects made without identity: begun, interrupted, corrected, and what is not let through. */
class DoorTest {

  private static final ContentHash ARCH =
      ContentHash.of(SmallPractice.photo(Scene.UPPER_OCCLUSAL, 5));

  @TempDir private Path home;
  private SmallPractice small;

  @BeforeEach
  void layOut() throws IOException {
    small = SmallPractice.layOut(home);
  }

  private Settings with(Identity identity, boolean facesCovered) {
    return SettingsWith.door(small.settings(), new DoorRules(identity, facesCovered));
  }

  private Practice open(Identity identity) throws IOException {
    return small.open(with(identity, true), WriteSteps.PASS);
  }

  private void killed(Identity identity) throws IOException {
    try (Practice practice =
        small.open(with(identity, true), Death.at(WriteStep.OBJECT_NAMED, 1))) {
      assertThatThrownBy(() -> small.ingest(practice)).isInstanceOf(Death.class);
    }
  }

  @Test
  void anInterruptedRunIsCompletedAsItWasBegun() throws IOException {
    killed(Identity.DATES_MOVED);
    try (Practice practice = open(Identity.KEPT)) {
      IngestReport report = small.ingest(practice);
      assertThat(report.completed()).isEqualTo(1);
      assertThat(isWithoutIdentity(object(practice, "a.jpg", report))).isTrue();
      assertThat(isWithoutIdentity(object(practice, "b.jpg", report))).isFalse();
      assertThat(Verify.run(practice)).isEmpty();
    }
  }

  @Test
  void aClinicalRecordThatWasBegunIsCompletedAsOne() throws IOException {
    killed(Identity.KEPT);
    try (Practice practice = open(Identity.NO_DATES)) {
      IngestReport report = small.ingest(practice);
      DataSet begun = object(practice, "a.jpg", report);
      DataSet later = object(practice, "b.jpg", report);
      assertThat(begun.string(Tags.PatientName)).contains("Tallgrass^Orla");
      assertThat(isWithoutIdentity(later)).isTrue();
      assertThat(later.string(Tags.StudyInstanceUID))
          .as("a clinical study and one without identity have nothing in common")
          .isNotEqualTo(begun.string(Tags.StudyInstanceUID));
      assertThat(later.string(Tags.SeriesInstanceUID))
          .isNotEqualTo(begun.string(Tags.SeriesInstanceUID));
      assertThat(Verify.run(practice)).isEmpty();
    }
  }

  @Test
  void aProgramThatMakesObjectsOtherwiseDoesNotGiveTheIdentityBack() throws IOException {
    killed(Identity.DATES_MOVED);
    try (Practice practice = open(Identity.KEPT)) {
      Intent open = practice.store().ledger().intents().unfinished(ARCH).get(0);
      String older = open.recipe().replace("\"version\":\"2 ", "\"version\":\"1 ");
      assertThat(older).isNotEqualTo(open.recipe());
      assertThat(Making.repeatable(older)).isEmpty();
      assertThat(Making.now(practice.settings(), List.of(open)).hasIdentity()).isFalse();
    }
  }

  /** What a program that knows of no objects without identity reads in such an intent. */
  @Test
  void theVersionIsNotThatOfAClinicalRecord() throws IOException {
    Making making = Making.now(with(Identity.DATES_MOVED, false));
    assertThat(making.version()).isNotEqualTo(Making.now(small.settings()).version());
    assertThat(Making.repeatable(making.text())).contains(making);
    assertThat(Making.now(small.settings()).text())
        .as("the recipe of clinical records is as it was")
        .isEqualTo(
            "{\"version\":\"2\",\"institution\":\"Practice at the Weir\","
                + "\"zone\":\"Europe/Vienna\",\"lowerArch\":\"INCISORS_DOWN\"}");
  }

  /** The file is gone, the line in the settings too: the frame that is kept is filed again. */
  @Test
  void aCorrectionStaysWithoutIdentityAndSoDoesItsNote() throws Exception {
    String id;
    DataSet before;
    try (Practice practice = open(Identity.DATES_MOVED)) {
      assertThat(small.ingest(practice).filed()).hasSize(2);
      id = practice.store().ids().of(ARCH);
      before = new KeptPhoto(practice).object(id).orThrow();
    }
    Files.delete(small.inbox().resolve("a.jpg"));
    try (Practice practice = open(Identity.KEPT)) {
      PersonWords words =
          PersonWords.by("Ada").with(PhotoFact.TEETH, "36").with(PhotoFact.NOTE, "Orla again");
      assertThat(new Corrections(practice).move(id, words.seenByPerson(), Why.of("wrong tooth")))
          .isInstanceOf(Outcome.Done.class);
      DataSet now = new KeptPhoto(practice).object(id).orThrow();
      assertThat(isWithoutIdentity(now)).isTrue();
      for (int same :
          List.of(Tags.PatientID, Tags.StudyInstanceUID, Tags.StudyDate, Tags.ContentDate)) {
        assertThat(now.string(same)).isEqualTo(before.string(same));
      }
      assertThat(now.string(Tags.SOPInstanceUID)).isNotEqualTo(before.string(Tags.SOPInstanceUID));
      assertThat(now.string(Tags.ImageComments).orElse("")).doesNotContain("Orla");
      assertThat(Verify.run(practice)).isEmpty();

      NoteRow row = practice.store().ledger().notes().of(ARCH, 1).orElseThrow();
      byte[] bytes = practice.store().objects().get(row.sopUid()).orElseThrow();
      DataSet note = Part10Reader.read(bytes).orThrow().data();
      assertThat(isWithoutIdentity(note)).isTrue();
      assertThat(note.string(Tags.PatientID)).isEqualTo(before.string(Tags.PatientID));
      LocalDate corrected = LocalDate.of(2026, 3, 14);
      long shift =
          LocalDate.of(2026, 3, 12)
              .until(before.date(Tags.StudyDate).orElseThrow(), ChronoUnit.DAYS);
      assertThat(note.date(Tags.ContentDate)).contains(corrected.plusDays(shift));
      assertThat(note.string(Tags.ContentTime)).contains("000000");
      assertThat(new String(bytes, StandardCharsets.ISO_8859_1))
          .doesNotContain("20260314", "Tallgrass", "Weir");
      Path file = Files.write(home.resolve("note.dcm"), bytes);
      assertThat(ExternalTool.require("dciodvfy", "dicom3tools").run(file.toString()).errors())
          .doesNotContain("Error");
    }
  }

  @Test
  void withoutDatesNoneIsLeft() throws IOException {
    try (Practice practice = open(Identity.NO_DATES)) {
      IngestReport report = small.ingest(practice);
      DataSet object = object(practice, "b.jpg", report);
      assertThat(object.items(Tags.DeidentificationMethodCodeSequence))
          .extracting(item -> item.string(Tags.CodeValue).orElse(""))
          .containsExactly("113100", "113105");
      assertThat(object.string(Tags.LongitudinalTemporalInformationModified)).contains("REMOVED");
      assertThat(object.string(Tags.StudyDate).orElse("")).isEmpty();
      assertThat(object.contains(Tags.AcquisitionDateTime)).isFalse();
      for (String uid : practice.store().objects().list()) {
        byte[] bytes = practice.store().objects().get(uid).orElseThrow();
        assertThat(new String(bytes, StandardCharsets.ISO_8859_1)).doesNotContain("20260312");
        assertThat(CheckReport.of(uid, bytes).errors()).isZero();
      }
      assertThat(Verify.run(practice)).isEmpty();
    }
  }

  @Test
  void whatMayShowAFaceWaitsUnlessTheConsentCoversIt() throws IOException {
    Files.writeString(
        small.inbox().resolve("manifest.csv"),
        """
        file,visit,view,teeth,mirror,incisors,crop
        a.jpg,V1,lower occlusal,46,as shot,top,0.1 0.1 0.9 0.9
        b.jpg,V1,face smiling,,none,,
        c.jpg,V1,upper occlusal,,as shot,top,
        """);
    try (Practice practice = small.open(with(Identity.DATES_MOVED, false), WriteSteps.PASS)) {
      IngestReport report = small.ingest(practice);
      assertThat(report.filed()).extracting(FiledPhoto::name).containsExactly("c.jpg");
      assertThat(report.waiting())
          .flatExtracting(WaitingPhoto::reasons)
          .extracting(WaitingPhoto.Reason::sentence)
          .containsExactly(
              "its whole frame would be kept beside the crop and may show the face, and objects"
                  + " are made without identity here",
              "its view shows the face, and objects are made without identity here");
      assertThat(practice.store().objects().list()).hasSize(1);
      String id = practice.store().ids().of(ARCH);
      PersonWords words = PersonWords.by("Ada").with(PhotoFact.MIRROR, "as shot").seenByPerson();
      assertThat(new Corrections(practice).file(id, words))
          .isEqualTo(
              Outcome.refused(
                  "its whole frame would be kept beside the crop and may show the face, and"
                      + " objects are made without identity here",
                  "if the consent of all these patients covers faces, set faces-covered = true"
                      + " under [intake] in vestibule.toml; if no face is in the frame, file it"
                      + " without a crop"));
      assertThat(Verify.run(practice)).noneMatch(Finding::asksForAPerson);
    }
    try (Practice practice = open(Identity.DATES_MOVED)) {
      assertThat(small.ingest(practice).filed()).hasSize(2);
      DataSet face =
          new KeptPhoto(practice)
              .object(
                  practice.store().ids().of(ContentHash.of(SmallPractice.photo(Scene.FRONTAL, 6))))
              .orThrow();
      assertThat(face.string(Tags.RecognizableVisualFeatures)).contains("YES");
    }
  }

  /** A view of one's own that is called like the patient: the object would tell the name. */
  @Test
  void anObjectThatWouldTellANameAllTheSameIsNotKept() throws IOException {
    Files.writeString(
        home.resolve("views.csv"),
        """
        key,name,words,permanent,mixed,deciduous,region,structure,view,modifiers,shown,shown_incisors_up,looking,usual,series,arch,side,occlusal,face
        own-front,Front of Tallgrass,own front,"15-25, 45-35",,,123851003,,399033003,,L\\F,,P,direct,,,,no,no
        """);
    Files.writeString(
        small.inbox().resolve("manifest.csv"),
        """
        file,visit,view,teeth,mirror,incisors,crop
        b.jpg,V1,own front,,none,,
        """);
    try (Practice practice = open(Identity.DATES_MOVED)) {
      IngestReport report = small.ingest(practice);
      assertThat(report.filed()).isEmpty();
      assertThat(report.waiting().stream().filter(photo -> photo.name().equals("b.jpg")).toList())
          .flatExtracting(WaitingPhoto::reasons)
          .extracting(WaitingPhoto.Reason::sentence)
          .containsExactly(
              "made without identity, its object would still hold a name, a number or a day that"
                  + " is known of its patient, visit, file or practice");
      assertThat(practice.store().objects().list()).isEmpty();
    }
    try (Practice practice = open(Identity.KEPT)) {
      assertThat(small.ingest(practice).filed())
          .as("begun without identity once, it stays so")
          .isEmpty();
    }
  }

  @Test
  void anOrphanWithoutIdentityIsNotEnteredUnderItsPseudonym() throws IOException {
    String uid;
    byte[] bytes;
    try (Practice practice = open(Identity.DATES_MOVED)) {
      small.ingest(practice);
      Intent frontal =
          practice
              .store()
              .ledger()
              .intents()
              .current(ContentHash.of(SmallPractice.photo(Scene.FRONTAL, 6)))
              .get(0);
      uid = frontal.sopUid();
      bytes = practice.store().objects().get(uid).orElseThrow();
      Outcome<String> entered =
          new Reentry(practice, "Ada").enter(new Reentry.Found(uid, bytes), null, false);
      assertThat(((Refused<String>) entered).reason())
          .isEqualTo("it was made without identity and doesn't say whose it is");
    }
  }

  private static boolean isWithoutIdentity(DataSet object) {
    return object.string(Tags.PatientIdentityRemoved).filter("YES"::equals).isPresent()
        && object.string(Tags.PatientID).orElse("").matches("R-[0-9A-Z]{12}");
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
