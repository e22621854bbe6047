package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.base.ContentHash;
import org.vestibule.flow.Practice;
import org.vestibule.flow.TestHome;
import org.vestibule.flow.Verify;
import org.vestibule.samples.Scene;
import org.vestibule.store.ledger.CorrectionRow;
import org.vestibule.store.ledger.EventRow;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.Ledger;

/** Taking photographs out: nothing is deleted, and who and why are kept. */
class RejectCommandTest {

  private static final String ADA = "Ada Example";

  @TempDir private static Path folder;

  private static TestHome home;
  private static String filed;
  private static String again;
  private static String waits;
  private static String stays;

  @BeforeAll
  static void layOut() throws IOException {
    home = TestHome.in(folder);
    filed = home.put("filed.jpg", Scene.FRONTAL, 1);
    again = home.put("again.jpg", Scene.FRONTAL, 2);
    waits = home.put("waits.jpg", Scene.FRONTAL, 3);
    stays = home.put("stays.jpg", Scene.FRONTAL, 4);
    home.manifest(
        """
        file,visit,view,mirror
        filed.jpg,V1,frontal,none
        again.jpg,V1,frontal,none
        stays.jpg,V1,frontal,none
        """);
    assertThat(home.ingest().filed()).hasSize(3);
  }

  @Test
  void aFiledOneLeavesSearchAndItsObjectStays() throws IOException {
    Asked rejected = Asked.by(ADA, home, "reject", filed, "--why", "not our patient");
    assertThat(rejected.err()).isEmpty();
    assertThat(rejected.code()).isZero();
    assertThat(rejected.out())
        .isEqualTo(
            "Photograph "
                + filed
                + " is out of search. Its object and its history stay in the record.\n");
    assertThat(Asked.of(home, "find", "frontal").out()).doesNotContain(filed).contains(stays);
    try (Practice practice = home.open()) {
      Ledger ledger = practice.store().ledger();
      ContentHash hash = TestHome.hash(practice, filed);
      List<Intent> all = ledger.intents().of(hash);
      assertThat(all).hasSize(1);
      assertThat(practice.store().objects().get(all.get(0).sopUid())).isPresent();
      assertThat(ledger.corrections().of(hash))
          .extracting(CorrectionRow::newRevision, CorrectionRow::who, CorrectionRow::why)
          .containsExactly(org.assertj.core.groups.Tuple.tuple(null, ADA, "not our patient"));
      assertThat(Verify.run(practice)).isEmpty();
    }
    assertThat(home.ingest().filed()).as("a later run leaves it rejected").isEmpty();
    Asked shown = Asked.of(home, "show", filed);
    assertThat(shown.code()).isEqualTo(3);
    assertThat(shown.err())
        .isEqualTo(
            "vestibule: this photograph was rejected and is out of the record.\n  What to do: file"
                + " it again if that was wrong.\n");
    Asked twice = Asked.by(ADA, home, "reject", filed, "--why", "again");
    assertThat(twice.code()).isEqualTo(3);
    assertThat(twice.err())
        .isEqualTo(
            "vestibule: photograph "
                + filed
                + " is neither filed nor waiting.\n  What to do: nothing needs to be done.\n");
  }

  @Test
  void aRejectedOneIsFiledAgainUnderANewUid() throws IOException {
    assertThat(Asked.by(ADA, home, "reject", again, "--why", "by mistake").code()).isZero();
    Asked back =
        Asked.by(
            ADA, home, "file", again, "--visit", "V1", "--view", "frontal", "--mirror", "none");
    assertThat(back.err()).isEmpty();
    assertThat(back.code()).isZero();
    assertThat(Asked.of(home, "find", "frontal").out()).contains(again);
    try (Practice practice = home.open()) {
      List<Intent> all = practice.store().ledger().intents().of(TestHome.hash(practice, again));
      assertThat(all).extracting(Intent::revision).containsExactly(1, 2);
      assertThat(all).extracting(Intent::sopUid).doesNotHaveDuplicates();
      assertThat(Verify.run(practice)).isEmpty();
    }
  }

  @Test
  void aWaitingOneLeavesTheListAndStaysOff() throws IOException {
    assertThat(Asked.of(home, "waiting").out()).contains(waits);
    Asked rejected = Asked.by(ADA, home, "reject", waits, "--why", "a coffee mug");
    assertThat(rejected.out())
        .isEqualTo(
            "Photograph " + waits + " no longer waits. Its file stays where it is, untouched.\n");
    assertThat(home.inbox().resolve("waits.jpg")).exists();
    assertThat(home.ingest().waiting()).isEmpty();
    assertThat(Asked.of(home, "waiting").code()).isZero();
    try (Practice practice = home.open()) {
      assertThat(practice.store().ledger().events().of(TestHome.hash(practice, waits)))
          .extracting(EventRow::who, EventRow::what, EventRow::details)
          .contains(org.assertj.core.groups.Tuple.tuple(ADA, "dismissed", "a coffee mug"));
    }
  }

  @Test
  void aReasonAndANameAreNeeded() {
    assertThat(Asked.of(home, "reject", stays, "--why", "wrong").code()).isEqualTo(2);
    assertThat(Asked.by(ADA, home, "reject", stays).code()).isEqualTo(2);
    assertThat(Asked.by(ADA, home, "reject", stays, "--why", "").code()).isEqualTo(2);
    assertThat(Asked.of(home, "find", "frontal").out()).contains(stays);
  }
}
