package org.vestibule.store.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.math.BigInteger;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.base.ContentHash;
import org.vestibule.encode.Role;

/** From intent to object kept, corrected and rejected: identities are given once and for all. */
class FilingTest {

  @TempDir private Path folder;
  private Ledger ledger;

  @BeforeEach
  void open() {
    ledger = LedgerFixture.open(folder.resolve("ledger.sqlite"));
  }

  @AfterEach
  void close() {
    ledger.close();
  }

  private Filing filing(String photo, String patient, Role... roles) {
    return LedgerFixture.decide(ledger, LedgerFixture.arrive(ledger, photo), patient, roles);
  }

  private PhotoState state(ContentHash hash) {
    return ledger.photos().find(hash).orElseThrow().state();
  }

  @Test
  void theSameFilingAgainGetsTheSameIdentities() {
    Filing filing = filing("a", "P1", Role.FRAME, Role.CROP);
    List<Intent> first = ledger.intents().begin(filing, "A. Finch");
    assertThat(ledger.intents().begin(filing, "A. Finch")).isEqualTo(first);
    assertThat(first).extracting(Intent::role).containsExactly(Role.FRAME, Role.CROP);
    assertThat(first).extracting(Intent::seriesNumber).containsExactly(1, 2);
    assertThat(state(filing.hash())).isEqualTo(PhotoState.INTENDED);
  }

  /** PS3.5 B.2: 2.25 and a UUID in decimal; RFC 9562 4.1, 5.8: variant 10, version 8. */
  @Test
  void everyIdentityIsAVersionEightUuid() {
    Intent intent = ledger.intents().begin(filing("a", "P1"), "A. Finch").get(0);
    for (String uid : List.of(intent.sopUid(), intent.studyUid(), intent.seriesUid())) {
      assertThat(uid).startsWith("2.25.").hasSizeLessThanOrEqualTo(64);
      BigInteger uuid = new BigInteger(uid.substring(5));
      assertThat(uuid.shiftRight(76).intValue() & 0xF).as("version").isEqualTo(8);
      assertThat(uuid.shiftRight(62).intValue() & 0x3).as("variant").isEqualTo(2);
    }
  }

  @Test
  void numbersCountOnAndAreNeverGivenAgain() {
    LedgerFixture.file(ledger, filing("a", "P1"));
    ledger.intents().begin(filing("b", "P1"), "A. Finch");
    ledger.intents().abandon(LedgerFixture.photo("b"), "A. Finch", "can't be turned");
    Intent third = LedgerFixture.file(ledger, filing("c", "P1")).get(0);
    assertThat(third.instanceNumber()).isEqualTo(3);
    assertThat(state(LedgerFixture.photo("b"))).isEqualTo(PhotoState.SEEN);
    assertThat(LedgerFixture.file(ledger, filing("d", "P2")).get(0).instanceNumber()).isEqualTo(1);
  }

  @Test
  void toAnotherPatientAndBackIsTheThirdRevisionUnderANewIdentity() {
    Intent first = LedgerFixture.file(ledger, filing("a", "P1")).get(0);
    Intent second = LedgerFixture.file(ledger, filing("a", "P2")).get(0);
    Intent third = LedgerFixture.file(ledger, filing("a", "P1")).get(0);
    assertThat(List.of(first, second, third)).extracting(Intent::revision).containsExactly(1, 2, 3);
    assertThat(third.sopUid()).isNotIn(first.sopUid(), second.sopUid());
    assertThat(third.studyUid()).isEqualTo(first.studyUid()).isNotEqualTo(second.studyUid());
    assertThat(ledger.intents().current(first.hash())).containsExactly(third);
    assertThat(ledger.corrections().of(first.hash()))
        .extracting(CorrectionRow::revision, CorrectionRow::newRevision)
        .containsExactly(tuple(1, 2), tuple(2, 3));
    assertThat(ledger.kept().all()).as("old objects stay").hasSize(3);
  }

  @Test
  void aFilingThatIsNotFinishedIsGivenUpForAnother() {
    Intent first = ledger.intents().begin(filing("a", "P1"), "A. Finch").get(0);
    Intent second = ledger.intents().begin(filing("a", "P2"), "A. Finch").get(0);
    assertThat(ledger.intents().unfinished()).containsExactly(second);
    assertThat(ledger.intents().whyAbandoned(first.sopUid())).isPresent();
    assertThat(ledger.intents().whyAbandoned(second.sopUid())).isEmpty();
  }

  @Test
  void theStudyThatTheWorklistNamesCountsAtTheFirstFilingOnly() {
    Filing plain = filing("a", "P1");
    Filing named = named(plain, "1.2.3");
    assertThat(ledger.intents().begin(named, "A. Finch").get(0).studyUid()).isEqualTo("1.2.3");
    Filing later = named(filing("b", "P1"), "1.2.4");
    assertThat(ledger.intents().begin(later, "A. Finch").get(0).studyUid()).isEqualTo("1.2.3");
  }

  private static Filing named(Filing filing, String study) {
    return new Filing(
        filing.hash(),
        filing.decisionId(),
        filing.decided(),
        filing.recipe(),
        filing.issuer(),
        filing.patientId(),
        filing.visitKey(),
        study,
        filing.device(),
        filing.set(),
        filing.roles());
  }

  @Test
  void frameAndCropAreKeptTogetherOrNotAtAll() {
    Filing filing = filing("a", "P1", Role.FRAME, Role.CROP);
    List<Intent> both = ledger.intents().begin(filing, "A. Finch");
    List<KeptObject> frameOnly = List.of(LedgerFixture.object(both.get(0)));
    String brief = filing.hash().brief();
    assertThatThrownBy(() -> ledger.kept().keep(filing.hash(), frameOnly, "{}"))
        .isInstanceOf(LedgerException.class)
        .hasMessage(
            "of photograph "
                + brief
                + " 2 objects are intended, but other or not all of them are to be kept");
    assertThat(ledger.kept().all()).isEmpty();
    assertThat(ledger.intents().unfinished(filing.hash())).isEqualTo(both);
    assertThat(ledger.changes().last()).isEmpty();
  }

  @Test
  void rejectingTakesItOutOfRecordAndSearchAndSaysWhoAndWhy() {
    Filing filing = filing("a", "P1");
    LedgerFixture.file(ledger, filing);
    assertThat(ledger.corrections().reject(filing.hash(), "A. Finch", "not a tooth", "unsafe"))
        .isTrue();
    assertThat(ledger.corrections().reject(filing.hash(), "A. Finch", "again", "unsafe")).isFalse();
    assertThat(ledger.intents().current(filing.hash())).isEmpty();
    assertThat(state(filing.hash())).isEqualTo(PhotoState.REJECTED);
    assertThat(ledger.corrections().of(filing.hash()))
        .containsExactly(
            new CorrectionRow(
                filing.hash(), 1, null, "A. Finch", "not a tooth", "unsafe", LedgerFixture.NOW));
    assertThat(ledger.changes().last().orElseThrow().record()).isNull();
  }

  @Test
  void aPhotographThatNeverArrivedCannotBeFiled() {
    Filing filing = LedgerFixture.filing(LedgerFixture.photo("z"), "0", "P1");
    assertThatThrownBy(() -> ledger.intents().begin(filing, "A. Finch"))
        .isInstanceOf(LedgerException.class)
        .hasMessage("photograph " + filing.hash().brief() + " never arrived here");
  }

  @Test
  void aFilingHasAFrame() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> LedgerFixture.filing(LedgerFixture.photo("z"), "0", "P1", Role.CROP))
        .withMessage("a filing has a frame, and at most one crop");
  }
}
