package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.base.ContentHash;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;
import org.vestibule.flow.KeptPhoto;
import org.vestibule.flow.Practice;
import org.vestibule.flow.TestHome;
import org.vestibule.flow.Verify;
import org.vestibule.samples.Scene;
import org.vestibule.store.ledger.CorrectionRow;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.Ledger;

/** Correcting what was filed: a new revision takes the old one's place, and both are told of. */
class MoveCommandTest {

  private static final String ADA = "Ada Example";
  private static final String BO = "Bo Sample";

  @TempDir private static Path folder;

  private static TestHome home;
  private static String there;
  private static String gone;
  private static String kept;
  private static String waits;
  private static String cropped;

  @BeforeAll
  static void layOut() throws IOException {
    home = TestHome.in(folder);
    there = home.put("there.jpg", Scene.FRONTAL, 1);
    gone = home.put("gone.jpg", TestHome.photo(Scene.RIGHT_BUCCAL, 2).orientation(6).bytes());
    kept = home.put("kept.jpg", Scene.FRONTAL, 3);
    waits = home.put("waits.jpg", Scene.FRONTAL, 4);
    cropped = home.put("cropped.jpg", Scene.UPPER_OCCLUSAL, 5);
    home.manifest(
        """
        file,visit,view,teeth,mirror,incisors,crop
        there.jpg,V1,frontal,11,none,,
        gone.jpg,V1,right buccal,,as shot,,
        kept.jpg,V1,frontal,,none,,
        cropped.jpg,V1,upper occlusal,16,as shot,top,0.2 0.25 0.8 0.75
        """);
    assertThat(home.ingest().filed()).hasSize(4);
  }

  @Test
  void toAnotherPatientAndBackIsTheThirdRevisionUnderANewUid() throws IOException {
    Asked moved =
        Asked.by(ADA, home, "move", there, "--visit", "V2", "--why", "wrong patient chosen");
    assertThat(moved.err()).isEmpty();
    assertThat(moved.code()).isZero();
    assertThat(moved.out())
        .isEqualTo(
            "Filed "
                + there
                + " (there.jpg): Ned Brightwater, visit V2 of 2026-03-12, Frontal, teeth together, upper right central"
                + " incisor (11); warning: the photograph's time lies outside the visit; the person's word was followed.\nThe earlier object stays in the record, out of search.\n");
    assertThat(found("P1")).doesNotContain(there);
    assertThat(found("P2")).contains(there);

    Asked back = Asked.by(BO, home, "move", there, "--visit", "V1", "--why", "it was right before");
    assertThat(back.code()).isZero();
    assertThat(found("P1")).contains(there);
    assertThat(found("P2")).doesNotContain(there);

    try (Practice practice = home.open()) {
      Ledger ledger = practice.store().ledger();
      ContentHash hash = TestHome.hash(practice, there);
      List<Intent> all = ledger.intents().of(hash);
      assertThat(all).extracting(Intent::revision).containsExactly(1, 2, 3);
      Set<String> uids = new HashSet<>(all.stream().map(Intent::sopUid).toList());
      assertThat(uids).hasSize(3);
      assertThat(practice.store().objects().list()).containsAll(uids);
      assertThat(ledger.corrections().of(hash))
          .extracting(
              CorrectionRow::revision,
              CorrectionRow::newRevision,
              CorrectionRow::who,
              CorrectionRow::why)
          .containsExactly(
              org.assertj.core.groups.Tuple.tuple(1, 2, ADA, "wrong patient chosen"),
              org.assertj.core.groups.Tuple.tuple(2, 3, BO, "it was right before"));
      assertThat(all.get(0).studyUid()).isEqualTo(all.get(2).studyUid());
      assertThat(all.get(1).studyUid()).isNotEqualTo(all.get(0).studyUid());
      DataSet now = new KeptPhoto(practice).object(there).orThrow();
      assertThat(now.string(Tags.SOPInstanceUID)).contains(all.get(2).sopUid());
      assertThat(now.string(Tags.PatientID)).contains("P1");
      assertThat(Verify.run(practice)).isEmpty();
    }
  }

  @Test
  void aPhotographWhoseFileIsGoneIsCorrectedFromItsKeptFrame() throws IOException {
    byte[] before = jpeg(gone);
    Files.delete(home.inbox().resolve("gone.jpg"));
    Asked moved =
        Asked.by(ADA, home, "move", gone, "--mirror", "none", "--why", "it was no mirror");
    assertThat(moved.err()).isEmpty();
    assertThat(moved.code()).isZero();
    byte[] unflipped = jpeg(gone);
    assertThat(unflipped).isNotEqualTo(before);
    Asked again =
        Asked.by(ADA, home, "move", gone, "--mirror", "as shot", "--why", "it was a mirror");
    assertThat(again.code()).isZero();
    assertThat(jpeg(gone)).as("turned back without loss").isEqualTo(before);
  }

  @Test
  void aCropIsChangedAndTheFrameStaysWhole() throws IOException {
    Asked moved =
        Asked.by(
            ADA,
            home,
            "move",
            cropped,
            "--crop",
            "0,0,0.6,0.5",
            "--why",
            "too narrow",
            "--teeth",
            "17");
    assertThat(moved.err()).isEmpty();
    assertThat(moved.out()).contains("upper right second molar (17)").contains("cropped");
    try (Practice practice = home.open()) {
      KeptPhoto photo = new KeptPhoto(practice);
      assertThat(photo.object(cropped).orThrow().string(Tags.Columns)).contains("96");
      assertThat(photo.object(cropped).orThrow().string(Tags.Rows)).contains("64");
      assertThat(photo.object(cropped + "-frame").orThrow().string(Tags.Columns)).contains("160");
      assertThat(practice.store().ledger().intents().current(TestHome.hash(practice, cropped)))
          .hasSize(2)
          .allMatch(intent -> intent.revision() == 2);
    }
  }

  @Test
  void nothingNewSaidIsNoCorrection() throws IOException {
    Asked asked = Asked.by(ADA, home, "move", kept, "--why", "just so");
    assertThat(asked.code()).isEqualTo(3);
    assertThat(asked.err())
        .isEqualTo(
            "vestibule: nothing was said that differs from what is filed.\n  What to do: say what"
                + " is to be corrected, such as --visit, --view, --teeth or --mirror.\n");
    Asked same =
        Asked.by(ADA, home, "move", kept, "--visit", "V1", "--view", "frontal", "--why", "so");
    assertThat(same.code()).as("what was said is what is filed").isEqualTo(3);
    assertThat(same.err()).startsWith("vestibule: what was said is what is filed already.");
    assertThat(revisions(kept)).isEqualTo(1);
  }

  @Test
  void whatWaitsIsFiledAndNotMoved() {
    Asked asked = Asked.by(ADA, home, "move", waits, "--visit", "V1", "--why", "just so");
    assertThat(asked.code()).isEqualTo(3);
    assertThat(asked.err())
        .isEqualTo(
            "vestibule: this photograph is not filed, so there is nothing to correct.\n  What to"
                + " do: file it with file, if it waits.\n");
  }

  @Test
  void aReasonAndANameAreNeeded() throws IOException {
    Asked noReason = Asked.by(ADA, home, "move", kept, "--visit", "V2");
    assertThat(noReason.code()).isEqualTo(2);
    assertThat(noReason.err()).contains("--why");
    Asked noName = Asked.of(home, "move", kept, "--visit", "V2", "--why", "wrong");
    assertThat(noName.code()).isEqualTo(2);
    Asked blank = Asked.by(ADA, home, "move", kept, "--visit", "V2", "--why", " ");
    assertThat(blank.code()).as("an empty reason is none").isEqualTo(2);
    assertThat(blank.err())
        .isEqualTo(
            """
            vestibule: the reason is empty, and the record keeps one with every correction.
              What to do: say it in a few words: --why "wrong patient chosen".
            """);
    assertThat(revisions(kept)).isEqualTo(1);
  }

  @Test
  void aKindOfReasonThatThereIsNotIsRefusedAndNothingMoves() throws IOException {
    Asked asked =
        Asked.by(ADA, home, "move", kept, "--visit", "V2", "--why", "wrong", "--reason", "ugly");
    assertThat(asked.code()).isEqualTo(2);
    assertThat(asked.err())
        .isEqualTo(
            "vestibule: \"ugly\" is no kind of reason.\n  What to do: use one of wrong-visit,"
                + " wrong-side, unsafe, quality, blurred, dark, bright, framing.\n");
    assertThat(revisions(kept)).isEqualTo(1);
  }

  private static String found(String patient) {
    return Asked.of(home, "find", "frontal", "--patient", patient).out();
  }

  private static int revisions(String id) throws IOException {
    try (Practice practice = home.open()) {
      return practice.store().ledger().intents().of(TestHome.hash(practice, id)).size();
    }
  }

  private static byte[] jpeg(String id) throws IOException {
    try (Practice practice = home.open()) {
      return new KeptPhoto(practice).jpeg(id).orThrow();
    }
  }
}
