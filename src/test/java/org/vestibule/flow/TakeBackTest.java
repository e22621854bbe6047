package org.vestibule.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.assign.PersonWords;
import org.vestibule.assign.PhotoFact;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.samples.Scene;
import org.vestibule.store.ledger.CorrectionRow;
import org.vestibule.store.ledger.PhotoState;

/** What is filed over a preview, and what is taken back, with doubts that have to be answered. */
class TakeBackTest {

  @TempDir Path folder;

  private static PersonWords said(String mirror) {
    return PersonWords.by("A. Finch")
        .with(PhotoFact.VISIT, "V1")
        .with(PhotoFact.VIEW, "frontal")
        .with(PhotoFact.MIRROR, mirror)
        .seenByPerson();
  }

  private static FilingByHand.Decided decided(String mirror, Doubt.Kind... answered) {
    return new FilingByHand.Decided(said(mirror), "L\\F", Set.of(answered));
  }

  private static String reason(Outcome<?> outcome) {
    return ((Refused<?>) outcome).sentence();
  }

  @Test
  void whatIsTakenBackWaitsAgainAndItsHistoryStays() throws Exception {
    TestHome home = TestHome.in(folder);
    String id = home.put("a.jpg", Scene.FACE_SMILING, 5);
    try (Practice practice = home.open()) {
      home.ingest(practice);
      ContentHash photo = TestHome.hash(practice, id);
      FilingByHand filing = new FilingByHand(practice);
      filing.file(photo, decided("none")).orThrow();
      assertThat(filing.filedBy(photo).orElseThrow().person()).isEqualTo("A. Finch");
      assertThat(filing.canBeTakenBack(photo)).isTrue();
      filing.takeBack(photo, "B. Rook", Why.of("wrong stretch"), seen(filing, photo)).orThrow();
      var ledger = practice.store().ledger();
      assertThat(ledger.photos().find(photo).orElseThrow().state()).isEqualTo(PhotoState.WAITING);
      WaitingPhoto waiting = new WaitingPhotos(practice).find(photo).orElseThrow();
      assertThat(waiting.reasons().get(0).sentence()).isEqualTo("B. Rook took its filing back");
      assertThat(waiting.proposal()).containsEntry("view", "frontal");
      CorrectionRow correction = ledger.corrections().of(photo).get(0);
      assertThat(correction.who()).isEqualTo("B. Rook");
      assertThat(correction.why()).isEqualTo("wrong stretch");
      filing.file(photo, decided("none")).orThrow();
      assertThat(ledger.decisions().of(photo)).hasSize(2);
      assertThat(ledger.intents().current(photo).get(0).revision()).isEqualTo(2);
      assertThat(Verify.run(practice)).isEmpty();
    }
  }

  @Test
  void whatAListFiledIsNotTakenBack() throws Exception {
    TestHome home = TestHome.in(folder);
    String id = home.put("a.jpg", Scene.FACE_SMILING, 5);
    home.manifest("file,visit,view,mirror\na.jpg,V1,frontal,none\n");
    try (Practice practice = home.open()) {
      home.ingest(practice);
      ContentHash photo = TestHome.hash(practice, id);
      FilingByHand filing = new FilingByHand(practice);
      assertThat(reason(filing.takeBack(photo, "B. Rook", Why.of("x"), seen(filing, photo))))
          .isEqualTo(
              "this photograph was filed by ingest, not by hand: correct it with move, or take"
                  + " it out with reject; taken back, the next run would file it again");
    }
  }

  private static LookedAt seen(FilingByHand filing, ContentHash photo) {
    return LookedAt.filedBy(filing.decision(photo));
  }

  @Test
  void whatWasDecidedOverAnotherFilingChangesNothing() throws Exception {
    TestHome home = TestHome.in(folder);
    String id = home.put("a.jpg", Scene.FACE_SMILING, 5);
    try (Practice practice = home.open()) {
      home.ingest(practice);
      ContentHash photo = TestHome.hash(practice, id);
      FilingByHand filing = new FilingByHand(practice);
      LookedAt waiting = seen(filing, photo);
      FiledPhoto filed = filing.file(photo, decided("none")).orThrow();
      assertThat(filed.decision()).isEqualTo(filing.decision(photo)).hasSize(32);
      LookedAt first = seen(filing, photo);
      PersonWords teeth =
          PersonWords.by("C. Wren")
              .with(PhotoFact.VISIT, "V1")
              .with(PhotoFact.VIEW, "frontal")
              .with(PhotoFact.MIRROR, "none")
              .with(PhotoFact.NOTE, "smiles")
              .seenByPerson();
      Why why = Why.of("a note was missing");
      filing.move(photo, new FilingByHand.Decided(teeth, "L\\F", Set.of()), why, first).orThrow();
      LookedAt second = seen(filing, photo);
      String meanwhile =
          "this photograph was corrected meanwhile by C. Wren on 2026-03-14: "
              + "nothing was changed; look at it again, then decide";
      assertThat(reason(filing.move(photo, decided("none"), why, first))).isEqualTo(meanwhile);
      assertThat(reason(filing.takeBack(photo, "B. Rook", why, first))).isEqualTo(meanwhile);
      assertThat(reason(filing.reject(photo, "B. Rook", why, first))).isEqualTo(meanwhile);
      assertThat(reason(filing.reject(photo, "B. Rook", why, waiting)))
          .startsWith("this photograph was filed meanwhile by C. Wren on 2026-03-14: ");
      assertThat(practice.store().ledger().decisions().of(photo)).hasSize(2);
      assertThat(practice.store().ledger().corrections().of(photo)).hasSize(1);
      filing.takeBack(photo, "B. Rook", why, second).orThrow();
      assertThat(reason(filing.move(photo, decided("none"), why, second)))
          .startsWith("this photograph was taken back or taken out meanwhile by B. Rook on ");
    }
  }

  @Test
  void aDoubtHasToBeAnsweredAndThePreviewToBeTheOneSeen() throws Exception {
    TestHome home = TestHome.in(folder);
    String id = home.put("a.jpg", Scene.FACE_SMILING, 5);
    try (Practice practice = home.open()) {
      home.ingest(practice);
      ContentHash photo = TestHome.hash(practice, id);
      FilingByHand filing = new FilingByHand(practice);
      assertThat(reason(filing.file(photo, decided("as shot"))))
          .isEqualTo(
              "something known of this photograph speaks against what was said of it: look at the"
                  + " preview, and say that it is right all the same if it is");
      FilingByHand.Decided other = new FilingByHand.Decided(said("none"), "R\\F", Set.of());
      assertThat(reason(filing.file(photo, other)))
          .isEqualTo(
              "it would now be shown as L\\F, which is not what the preview showed: look at the"
                  + " preview again, then file it");
      filing.file(photo, decided("as shot", Doubt.Kind.USUALLY_DIRECT)).orThrow();
    }
  }

  @Test
  void whatSpeaksAgainstTheWordsIsFound() throws Exception {
    TestHome home = TestHome.in(folder);
    String edited =
        home.put(
            "a.jpg",
            TestHome.photo(Scene.FACE_SMILING, 90).orientation(2).software("Lumo Edit 3").bytes());
    home.manifest("file,visit,view,mirror,teeth\na.jpg,V2,left buccal,as shot,36\n");
    try (Practice practice = home.open()) {
      home.ingest(practice);
      ContentHash photo = TestHome.hash(practice, edited);
      PersonWords words =
          said("none").with(PhotoFact.VIEW, "right buccal").with(PhotoFact.TEETH, "46");
      List<Doubt> doubts = new FilingPreview(practice).look(photo, words).orThrow().doubts();
      assertThat(doubts)
          .contains(
              new Doubt(Doubt.Kind.OTHER_VIEW, "left-buccal"),
              new Doubt(Doubt.Kind.OTHER_MIRROR, "as shot"),
              new Doubt(Doubt.Kind.OTHER_TEETH, "FDI 36"),
              new Doubt(Doubt.Kind.OTHER_VISIT, "V2"),
              new Doubt(Doubt.Kind.REFLECTED, ""),
              new Doubt(Doubt.Kind.OUTSIDE_VISIT, ""));
    }
  }
}
