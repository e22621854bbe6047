package org.vestibule.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Part10Reader;
import org.vestibule.dicom.Tags;
import org.vestibule.encode.RejectionNote;
import org.vestibule.flow.keeping.Repair;
import org.vestibule.samples.Scene;
import org.vestibule.store.Finding;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.Ledger;
import org.vestibule.store.ledger.LedgerCopy;
import org.vestibule.store.ledger.NoteRow;
import org.vestibule.store.objects.FolderObjectStore;
import org.vestibule.store.steps.WriteSteps;

/** Each correction leaves a note for the archive; nobody takes it for a strange file. */
class RejectionNotesTest {

  @TempDir private Path folder;

  private TestHome home;
  private String id;

  @BeforeEach
  void layOut() throws IOException {
    home = TestHome.in(folder.resolve("home"));
    id = home.put("a.jpg", Scene.UPPER_OCCLUSAL, 5);
    home.manifest(
        """
        file,visit,view,teeth,mirror,incisors,crop
        a.jpg,V1,upper occlusal,16,as shot,top,0.2 0.25 0.8 0.75
        """);
    assertThat(home.ingest().filed()).hasSize(1);
  }

  /** What is certain follows from what was changed; a person's word goes before it. */
  @ParameterizedTest
  @CsvSource({
    "visit, V2, , wrong-visit, 113038",
    "teeth, 17, , wrong-side, 113037",
    "view, upper-tooth-occlusal, , wrong-side, 113037",
    "note, seen again, , unsafe, 113037",
    "teeth, 17, framing, framing, 113001"
  })
  void aMovesNoteSaysWhatFollowsFromTheChange(
      String fact, String value, String stated, String reason, String title) throws IOException {
    try (Practice practice = home.open()) {
      List<Intent> before = practice.store().ledger().intents().current(hash(practice));
      Outcome<FiledPhoto> moved =
          new Corrections(practice)
              .move(id, ByPerson.says("Ada", fact, value), Why.of("mistaken", stated).orThrow());
      assertThat(moved).isInstanceOf(Outcome.Done.class);
      NoteRow note = practice.store().ledger().notes().of(hash(practice), 1).orElseThrow();
      assertThat(note.reason()).isEqualTo(reason);
      DataSet object = object(practice, note);
      assertThat(object.string(Tags.SOPClassUID)).contains(RejectionNote.SOP_CLASS);
      assertThat(object.item(Tags.ConceptNameCodeSequence).orElseThrow().string(Tags.CodeValue))
          .contains(title);
      assertThat(object.string(Tags.PatientID)).as("the old patient").contains("P1");
      assertThat(before).hasSize(2);
      assertThat(before)
          .allSatisfy(
              intent ->
                  assertThat(practice.store().ledger().notes().about(intent.sopUid()))
                      .contains(note));
      assertThat(Verify.run(practice)).isEmpty();
      assertThat(Repair.run(practice, null, true, null).orThrow().orphans()).isEmpty();
    }
  }

  @Test
  void aRejectionsNoteIsUnsafeUnlessAPersonSaysOtherwise() throws IOException {
    try (Practice practice = home.open()) {
      new Corrections(practice).reject(id, "Ada", Why.of("not ours")).orThrow();
      assertThat(practice.store().ledger().notes().of(hash(practice), 1).orElseThrow().reason())
          .isEqualTo("unsafe");
    }
  }

  /** A folder in its place: there, but every attempt to read it fails. */
  @Test
  void anObjectThatCannotBeReadIsAReasonAndNoEnd() throws IOException {
    try (Practice practice = home.open()) {
      Intent about = practice.store().ledger().intents().current(hash(practice)).get(0);
      practice.store().ledger().corrections().reject(hash(practice), "Ada", "not ours", "unsafe");
      Path object = practice.store().objects().path(about.sopUid()).orElseThrow();
      Files.delete(object);
      Files.createDirectory(object);
      assertThat(new RejectionNotes(practice).all())
          .extracting(Outcome.Refused::sentence)
          .containsExactly(
              "object "
                  + about.sopUid()
                  + " can't be read, and the note that it no longer counts can't be made without"
                  + " it: look at the disk and at who may read that file, then run ingest: it makes"
                  + " the note");
    }
  }

  @Test
  void aKindThatThereIsNotIsRefused() {
    assertThat(Why.of("so", "ugly"))
        .isEqualTo(
            Outcome.refused(
                "\"ugly\" is no kind of reason",
                "use one of wrong-visit, wrong-side, unsafe, quality, blurred, dark, bright,"
                    + " framing"));
  }

  @Test
  void theLedgersCopyKnowsNotesSoThatTheyAreBackedUp() throws IOException {
    try (Practice practice = home.open()) {
      new Corrections(practice).reject(id, "Ada", Why.of("not ours")).orThrow();
      Path copy = folder.resolve("copy.sqlite");
      practice.store().ledger().copyTo(copy);
      NoteRow note = practice.store().ledger().notes().all().get(0);
      assertThat(LedgerCopy.kept(copy))
          .contains(new LedgerCopy.Kept(note.sopUid(), note.fileHash(), note.sizeBytes()))
          .hasSize(3);
    }
  }

  @Test
  void aDamagedNoteIsFoundAndBroughtBackFromACopy() throws IOException {
    try (Practice practice = home.open()) {
      new Corrections(practice).reject(id, "Ada", Why.of("not ours")).orThrow();
      NoteRow note = practice.store().ledger().notes().all().get(0);
      byte[] sound = practice.store().objects().get(note.sopUid()).orElseThrow();
      new FolderObjectStore(folder.resolve("backup").resolve("objects"), WriteSteps.PASS)
          .putIfAbsent(note.sopUid(), sound);
      Path file = practice.store().objects().path(note.sopUid()).orElseThrow();
      Files.write(file, new byte[] {1});
      assertThat(Verify.run(practice))
          .extracting(Finding::what)
          .singleElement()
          .asString()
          .startsWith("object " + note.sopUid() + " was kept with " + sound.length + " bytes");
      Files.delete(file);
      assertThat(Verify.run(practice))
          .extracting(Finding::what)
          .containsExactly("object " + note.sopUid() + " is kept but not there");
      assertThat(
              Repair.run(practice, folder.resolve("backup"), false, null).orThrow().broughtBack())
          .containsExactly(note.sopUid());
      assertThat(Verify.run(practice)).isEmpty();
    }
  }

  /** A run that ended between correction and note: the next ingest makes the note. */
  @Test
  void aNoteThatARunDidNotComeToIsMadeByTheNextIngest() throws IOException {
    try (Practice practice = home.open()) {
      Ledger ledger = practice.store().ledger();
      assertThat(ledger.corrections().reject(hash(practice), "Ada", "not ours", "dark")).isTrue();
      assertThat(ledger.notes().missing()).hasSize(1);
    }
    home.ingest();
    try (Practice practice = home.open()) {
      assertThat(practice.store().ledger().notes().missing()).isEmpty();
      assertThat(practice.store().ledger().notes().all())
          .extracting(NoteRow::reason)
          .containsExactly("dark");
      assertThat(Verify.run(practice)).isEmpty();
    }
  }

  @Test
  void aNoteThatIsThereAlreadyIsTakenAsItIs() throws IOException {
    try (Practice practice = home.open()) {
      new Corrections(practice).reject(id, "Ada", Why.of("not ours")).orThrow();
      NoteRow note = practice.store().ledger().notes().all().get(0);
      byte[] first = practice.store().objects().get(note.sopUid()).orElseThrow();
      assertThat(new RejectionNotes(practice).all()).isEmpty();
      assertThat(new RejectionNotes(practice).note(hash(practice), 1))
          .isEqualTo(Outcome.done(note.sopUid()));
      assertThat(new RejectionNotes(practice).note(hash(practice), 2))
          .isEqualTo(
              Outcome.refused(
                  "revision 2 of photograph " + hash(practice).brief() + " was never taken back",
                  "run verify"));
      assertThat(practice.store().objects().get(note.sopUid()).orElseThrow()).isEqualTo(first);
      assertThat(practice.store().objects().list()).hasSize(3);
    }
  }

  @Test
  void withoutItsObjectANoteWaitsAndSaysWhy() throws IOException {
    try (Practice practice = home.open()) {
      Ledger ledger = practice.store().ledger();
      Intent frame = ledger.intents().current(hash(practice)).get(0);
      Files.delete(practice.store().objects().path(frame.sopUid()).orElseThrow());
      ledger.corrections().reject(hash(practice), "Ada", "not ours", "dark");
      assertThat(new RejectionNotes(practice).all())
          .containsExactly(
              new Outcome.Refused<>(
                  "object "
                      + frame.sopUid()
                      + " is missing, and the note that it no longer counts can't be made without"
                      + " it",
                  "restore it from the backup, then run ingest: it makes the note",
                  Outcome.Kind.DAMAGE));
    }
  }

  private ContentHash hash(Practice practice) {
    return practice.store().ids().find(id).orThrow().hash();
  }

  private static DataSet object(Practice practice, NoteRow note) throws IOException {
    byte[] bytes = practice.store().objects().get(note.sopUid()).orElseThrow();
    assertThat(ContentHash.of(bytes)).isEqualTo(note.fileHash());
    return Part10Reader.read(bytes).orThrow().data();
  }
}
