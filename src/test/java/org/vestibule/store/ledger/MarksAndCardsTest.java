package org.vestibule.store.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.SQLException;
import java.time.LocalDate;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.base.ContentHash;

/** Photographs found by marks, and visit cards found by tokens. */
class MarksAndCardsTest {

  private static final LocalDate DAY = LocalDate.of(2026, 3, 12);

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

  @Test
  void aMarkFindsAllThatBearIt() {
    ContentHash one = LedgerFixture.arrive(ledger, "one.jpg");
    ContentHash two = LedgerFixture.arrive(ledger, "two.jpg");
    ledger.arrivals().mark(two, "day", "2026-03-12");
    ledger.arrivals().mark(one, "day", "2026-03-12");
    ledger.arrivals().mark(two, "day", "2026-03-12");
    ledger.arrivals().mark(one, "shot", "2026-03-12");
    assertThat(ledger.arrivals().marked("day", "2026-03-12")).containsExactly(two, one);
    assertThat(ledger.arrivals().marked("day", "2026-03-13")).isEmpty();
  }

  /** Otherwise each photograph of an ingest would read the history of all others. */
  @Test
  void marksAreFoundByAnIndex() throws SQLException {
    try (var connection = LedgerFixture.foreign(folder.resolve("ledger.sqlite"));
        var statement = connection.createStatement();
        var plan =
            statement.executeQuery(
                "EXPLAIN QUERY PLAN SELECT hash FROM photo_mark WHERE practice = 'p' AND kind = 'k'"
                    + " AND value = 'v' ORDER BY number")) {
      assertThat(plan.next()).isTrue();
      assertThat(plan.getString("detail"))
          .contains("USING COVERING INDEX")
          .contains("(practice=? AND kind=? AND value=?)");
    }
  }

  @Test
  void aCardIsFoundByItsTokenAndByItsVisit() {
    VisitCardRow card = new VisitCardRow("7Q2MZ4K8RT", "V1", "willow", "P1", DAY);
    ledger.visitCards().add(card, "A. Finch");
    assertThat(ledger.visitCards().find("7Q2MZ4K8RT")).contains(card);
    assertThat(ledger.visitCards().find("7Q2MZ4K8RS")).isEmpty();
    assertThat(ledger.visitCards().of("V1")).containsExactly(card);
    assertThat(ledger.visitCards().of("V2")).isEmpty();
  }

  @Test
  void aTokenIsGivenOnce() {
    ledger.visitCards().add(new VisitCardRow("7Q2MZ4K8RT", "V1", "willow", "P1", DAY), "A. Finch");
    assertThatThrownBy(
            () ->
                ledger
                    .visitCards()
                    .add(new VisitCardRow("7Q2MZ4K8RT", "V2", "willow", "P2", DAY), "A. Finch"))
        .isInstanceOf(LedgerException.class);
    assertThat(ledger.visitCards().find("7Q2MZ4K8RT").orElseThrow().visit()).isEqualTo("V1");
  }
}
