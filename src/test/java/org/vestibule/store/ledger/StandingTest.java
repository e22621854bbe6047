package org.vestibule.store.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.base.ContentHash;
import org.vestibule.store.steps.WriteStep;

/** What arrived, waits and changed; and transactions that happen whole or not at all. */
class StandingTest {

  @TempDir private Path folder;
  private final AtomicBoolean diskGone = new AtomicBoolean();
  private Ledger ledger;

  @BeforeEach
  void open() {
    ledger =
        LedgerFixture.open(
            folder.resolve("ledger.sqlite"),
            step -> {
              if (step == WriteStep.LEDGER_COMMITTING && diskGone.get()) {
                throw new IOException("the disk is gone");
              }
            });
  }

  @AfterEach
  void close() {
    ledger.close();
  }

  private PhotoState state(ContentHash hash) {
    return ledger.photos().find(hash).orElseThrow().state();
  }

  @Test
  void theSameBytesUnderTwoNamesAreOnePhotograph() {
    ContentHash hash = LedgerFixture.photo("a");
    assertThat(ledger.arrivals().seen(new SeenFile(hash, "a.jpg", 9, LedgerFixture.NOW))).isTrue();
    assertThat(ledger.arrivals().seen(new SeenFile(hash, "b.jpg", 9, LedgerFixture.NOW))).isFalse();
    assertThat(ledger.arrivals().seen(new SeenFile(hash, "b.jpg", 9, LedgerFixture.NOW))).isFalse();
    assertThat(ledger.arrivals().of(hash))
        .extracting(SeenFile::name)
        .containsExactly("a.jpg", "b.jpg");
    assertThat(ledger.photos().counts()).containsEntry(PhotoState.SEEN, 1);
  }

  @Test
  void theLastFactsCount() {
    ContentHash hash = LedgerFixture.arrive(ledger, "a");
    ledger.arrivals().facts(hash, "camera", "{\"n\":1}");
    ledger.arrivals().facts(hash, "camera", "{\"n\":2}");
    assertThat(ledger.arrivals().facts(hash, "camera")).contains("{\"n\":2}");
    assertThat(ledger.arrivals().facts(hash, "other")).isEmpty();
  }

  @Test
  void twoDecisionsInTheSameWordsAreTwoDecisions() {
    ContentHash hash = LedgerFixture.arrive(ledger, "a");
    String first = ledger.decisions().add(hash, "{}", "A. Finch", "person", "").id();
    String second = ledger.decisions().add(hash, "{}", "A. Finch", "person", "").id();
    assertThat(second).isNotEqualTo(first).matches("[0-9a-f]{32}");
    assertThat(ledger.decisions().of(hash))
        .extracting(DecisionRow::id)
        .containsExactly(first, second);
  }

  @Test
  void whatWaitsIsFiledOrDismissedAndThenWaitsNoMore() {
    ContentHash filed = LedgerFixture.arrive(ledger, "a");
    ContentHash dismissed = LedgerFixture.arrive(ledger, "b");
    assertThat(ledger.waiting().put(filed, "[\"who\"]", "{}", "{\"n\":1}")).isTrue();
    assertThat(ledger.waiting().put(filed, "[\"who\"]", "{}", "{\"n\":1}")).isFalse();
    assertThat(ledger.waiting().put(dismissed, "[\"side\"]", "{}", "{}")).isTrue();
    LedgerFixture.file(ledger, LedgerFixture.decide(ledger, filed, "P1"));
    assertThat(ledger.waiting().dismiss(dismissed, "A. Finch", "a cat")).isTrue();
    assertThat(ledger.waiting().dismiss(dismissed, "A. Finch", "a cat")).isFalse();
    assertThat(ledger.waiting().all()).isEmpty();
    assertThat(state(filed)).isEqualTo(PhotoState.KEPT);
    assertThat(state(dismissed)).isEqualTo(PhotoState.REJECTED);
    assertThat(ledger.events().of(dismissed))
        .extracting(EventRow::details)
        .containsExactly("a cat");
  }

  @Test
  void whatIsFiledCannotWait() {
    ContentHash hash = LedgerFixture.arrive(ledger, "a");
    LedgerFixture.file(ledger, LedgerFixture.decide(ledger, hash, "P1"));
    assertThatThrownBy(() -> ledger.waiting().put(hash, "[]", "{}", "{}"))
        .isInstanceOf(LedgerException.class)
        .hasMessage("photograph " + hash.brief() + " is filed or being filed, so it can't wait");
  }

  @Test
  void aChangeThatChangesNothingHasNoNumber() {
    ledger.changes().remove("a");
    ledger.changes().put("a", "{\"n\":1}");
    ledger.changes().put("a", "{\"n\":1}");
    ledger.changes().remove("a");
    ledger.changes().remove("a");
    ledger.changes().put("a", "{\"n\":1}");
    assertThat(ledger.changes().after(0, 10))
        .extracting(ChangeRow::sequence)
        .containsExactly(1L, 2L, 3L);
    assertThat(ledger.changes().firstBroken()).isEmpty();
  }

  @Test
  void aTransactionThatFailsLeavesNothingOfIt() {
    ContentHash hash = LedgerFixture.arrive(ledger, "a");
    Filing filing = LedgerFixture.decide(ledger, hash, "P1");
    diskGone.set(true);
    assertThatThrownBy(() -> ledger.together(() -> LedgerFixture.file(ledger, filing)))
        .isInstanceOf(LedgerUnusableException.class)
        .hasMessage("the ledger could not be written");
    diskGone.set(false);
    assertThat(ledger.intents().of(hash)).isEmpty();
    assertThat(ledger.kept().all()).isEmpty();
    assertThat(state(hash)).isEqualTo(PhotoState.SEEN);
    LedgerFixture.file(ledger, filing);
    assertThat(state(hash)).isEqualTo(PhotoState.KEPT);
  }

  @Test
  void anEarlierWordingOfAVisitStaysInTheHistory() {
    PatientRow before = new PatientRow("willow", "P1", "Reed^Ada", null, "F", "");
    PatientRow after = new PatientRow("willow", "P1", "Reed^Adah", "1990-01-02", "F", "");
    assertThat(ledger.visits().put(before, "list")).isTrue();
    assertThat(ledger.visits().put(before, "list")).isFalse();
    assertThat(ledger.visits().put(after, "A. Finch")).isTrue();
    assertThat(ledger.visits().patient("willow", "P1")).contains(after);
    VisitRow orphan =
        new VisitRow(
            "V1",
            "willow",
            "P9",
            "2026-03-12T09:00",
            "2026-03-12T10:00",
            "Europe/Vienna",
            null,
            null,
            null,
            "");
    assertThatThrownBy(() -> ledger.visits().put(orphan, "list"))
        .isInstanceOf(LedgerException.class);
    assertThat(ledger.visits().visits()).isEmpty();
  }
}
