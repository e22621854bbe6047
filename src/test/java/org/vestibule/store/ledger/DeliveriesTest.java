package org.vestibule.store.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.vestibule.store.ledger.LedgerFixture.NOW;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.base.ContentHash;
import org.vestibule.encode.Role;

/** What is on its way, and in which order corrections travel. */
class DeliveriesTest {

  private static final String ARCHIVE = "archive";

  @TempDir private Path folder;
  private Ledger ledger;
  private Deliveries deliveries;

  @BeforeEach
  void open() {
    ledger = LedgerFixture.open(folder.resolve("ledger.sqlite"));
    deliveries = ledger.deliveries();
  }

  @AfterEach
  void close() {
    ledger.close();
  }

  private List<DeliveryRow> waiting() {
    deliveries.outgoing().follow(ARCHIVE, 1000);
    return deliveries.due(ARCHIVE, DeliveryState.WAITING, NOW, 100);
  }

  private void become(DeliveryRow row, DeliveryState state, Instant due) {
    boolean there = state != DeliveryState.REFUSED;
    deliveries.record(
        List.of(
            new DeliveryChange(row.number(), state, 1, 0, there, due, null, "", null, Map.of())),
        "courier");
  }

  private ContentHash filed(String name, Role... roles) {
    ContentHash hash = LedgerFixture.arrive(ledger, name);
    LedgerFixture.file(ledger, LedgerFixture.decide(ledger, hash, "P1", roles));
    return hash;
  }

  private void moved(ContentHash hash, String patient) {
    LedgerFixture.file(ledger, LedgerFixture.decide(ledger, hash, patient));
  }

  private String state(ContentHash hash) {
    return deliveries.of(hash).stream()
        .map(
            row ->
                (row.note() ? "note " : "photo ")
                    + row.revision()
                    + " "
                    + row.state()
                    + (row.takenBack() ? " taken back" : "")
                    + (row.behind() != null ? " behind" : "")
                    + (row.dueAt() != null ? " due" : ""))
        .toList()
        .toString();
  }

  @Test
  void whatIsKeptIsDueAtEachDestinationOnce() {
    filed("a.jpg", Role.FRAME, Role.CROP);
    assertThat(waiting()).hasSize(2);
    assertThat(waiting()).as("followed again").hasSize(2);
    deliveries.outgoing().follow("second", 1000);
    assertThat(deliveries.due("second", DeliveryState.WAITING, NOW, 10)).hasSize(2);
  }

  @Test
  void whatIsTakenBackBeforeItWasSentIsNotSent() {
    ContentHash hash = filed("a.jpg");
    waiting();
    ledger.corrections().reject(hash, "A. Finch", "wrong patient", "unsafe");
    assertThat(waiting()).isEmpty();
    assertThat(state(hash)).isEqualTo("[photo 1 WITHDRAWN]");
  }

  @Test
  void whatWasTakenBackBeforeItWasEverFollowedIsNotBegun() {
    ContentHash hash = filed("a.jpg");
    ledger.corrections().reject(hash, "A. Finch", "wrong patient", "unsafe");
    assertThat(waiting()).isEmpty();
    assertThat(state(hash)).isEqualTo("[]");
  }

  @Test
  void theNoteGoesFirstAndTheNewObjectStandsBehindIt() {
    ContentHash hash = filed("a.jpg");
    become(waiting().get(0), DeliveryState.CONFIRMED, null);
    moved(hash, "P2");
    List<DeliveryRow> due = waiting();
    assertThat(state(hash))
        .isEqualTo("[photo 1 CONFIRMED taken back, note 1 WAITING due, photo 2 WAITING behind]");
    assertThat(due).singleElement().matches(DeliveryRow::note);
    become(due.get(0), DeliveryState.SENT, NOW);
    assertThat(waiting()).as("a note that is only sent opens nothing").isEmpty();
    become(due.get(0), DeliveryState.CONFIRMED, null);
    assertThat(waiting()).singleElement().matches(row -> row.revision() == 2 && !row.note());
  }

  @Test
  void whatMayHaveArrivedIsTakenBackByANoteToo() {
    ContentHash hash = filed("a.jpg");
    assertThat(deliveries.begin(waiting().get(0))).isTrue();
    ledger.corrections().reject(hash, "A. Finch", "wrong patient", "unsafe");
    waiting();
    assertThat(state(hash)).isEqualTo("[photo 1 WAITING taken back, note 1 WAITING due]");
  }

  @Test
  void whatTheArchiveRefusedNeedsNoNote() {
    ContentHash hash = filed("a.jpg");
    become(waiting().get(0), DeliveryState.REFUSED, null);
    moved(hash, "P2");
    assertThat(waiting()).singleElement().matches(row -> row.revision() == 2 && !row.note());
    assertThat(state(hash)).isEqualTo("[photo 1 WITHDRAWN, photo 2 WAITING due]");
  }

  /** An answer to one attempt says nothing of an earlier one. */
  @Test
  void whatMayBeThereStaysSoWhateverIsAnsweredLater() {
    filed("a.jpg");
    DeliveryRow first = waiting().get(0);
    deliveries.begin(first);
    deliveries.notArrived(List.of(first), List.of(change(first, DeliveryState.FAILED, 1)), "x");
    assertThat(deliveries.find(first.number()).orElseThrow().perhapsThere()).isFalse();
    DeliveryRow second = deliveries.find(first.number()).orElseThrow();
    deliveries.begin(second);
    deliveries.record(List.of(change(second, DeliveryState.FAILED, 2)), "x");
    DeliveryRow third = deliveries.find(first.number()).orElseThrow();
    assertThat(third.perhapsThere()).isTrue();
    deliveries.begin(third);
    deliveries.notArrived(List.of(third), List.of(change(third, DeliveryState.REFUSED, 3)), "x");
    assertThat(deliveries.find(first.number()).orElseThrow().perhapsThere()).isTrue();
  }

  private static DeliveryChange change(DeliveryRow row, DeliveryState state, int attempts) {
    return new DeliveryChange(
        row.number(), state, attempts, 0, false, NOW, null, "", null, Map.of());
  }

  /** Corrected twice before the first note was confirmed: the last one still stands behind it. */
  @Test
  void aChainOfCorrectionsKeepsItsOrder() {
    ContentHash hash = filed("a.jpg");
    become(waiting().get(0), DeliveryState.SENT, NOW);
    moved(hash, "P2");
    waiting();
    moved(hash, "P3");
    waiting();
    assertThat(state(hash))
        .isEqualTo(
            "[photo 1 SENT taken back due, note 1 WAITING due, photo 2 WITHDRAWN behind,"
                + " photo 3 WAITING behind]");
  }

  /** The correction was made after the list of what is due was read. */
  @Test
  void whatIsTakenBackInTheLastMomentIsNotBegun() {
    ContentHash hash = filed("a.jpg");
    List<DeliveryRow> due = waiting();
    ledger.corrections().reject(hash, "A. Finch", "wrong patient", "unsafe");
    assertThat(deliveries.begin(due.get(0))).isFalse();
  }

  @Test
  void aNewDestinationGetsWhatCountsAndNothingElse() {
    ContentHash hash = filed("a.jpg");
    moved(hash, "P2");
    assertThat(waiting()).singleElement().matches(row -> row.revision() == 2 && !row.note());
  }

  /** With a million objects a run must not read those that are delivered. */
  @Test
  void whatIsDueIsFoundByAnIndex() throws SQLException {
    for (String[] query :
        new String[][] {
          {
            "delivery_due",
            "SELECT * FROM delivery WHERE practice = 'p' AND destination = 'a' AND state = 'SENT'"
                + " AND due_at IS NOT NULL AND due_at <= 'x' ORDER BY due_at, number LIMIT 5"
          },
          {
            "delivery_ended",
            "SELECT * FROM delivery WHERE practice = 'p' AND destination = 'a' AND due_at IS NULL"
                + " AND state NOT IN ('CONFIRMED', 'WITHDRAWN') AND taken_back = 0"
                + " ORDER BY number LIMIT 5"
          }
        }) {
      List<String> plan = new ArrayList<>();
      try (Connection connection = LedgerFixture.foreign(folder.resolve("ledger.sqlite"));
          Statement statement = connection.createStatement();
          ResultSet rows = statement.executeQuery("EXPLAIN QUERY PLAN " + query[1])) {
        while (rows.next()) {
          plan.add(rows.getString("detail"));
        }
      }
      assertThat(plan).singleElement().asString().contains("USING INDEX " + query[0]);
    }
  }
}
