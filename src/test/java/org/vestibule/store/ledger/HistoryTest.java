package org.vestibule.store.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.FieldSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.store.steps.WriteSteps;

/** History is only ever added to, by this program and by any other that opens the file. */
class HistoryTest {

  /** Tables that say how things stand now. Every other one is history. */
  private static final List<String> STANDING =
      List.of(
          "photo",
          "patient",
          "visit",
          "waiting",
          "delivery",
          "delivery_reached",
          "account",
          "session",
          "seal",
          "seal_mark",
          "seal_row");

  private static final List<String> HISTORY =
      List.of(
          "identity",
          "arrival",
          "facts",
          "patient_history",
          "visit_history",
          "decision",
          "waiting_history",
          "study",
          "series",
          "intent",
          "abandoned",
          "kept",
          "correction",
          "event",
          "change",
          "consent",
          "release",
          "release_item",
          "release_attestation",
          "release_withdrawal",
          "secret_mark",
          "visit_card",
          "photo_mark",
          "phone_link",
          "phone_link_end",
          "upload_begun",
          "upload",
          "share",
          "share_photo",
          "share_end",
          "share_opening",
          "note",
          "visit_order",
          "outgoing",
          "delivery_event",
          "delivery_coercion",
          "commitment",
          "commitment_item",
          "destination_event",
          "source_removed");

  @TempDir private static Path folder;
  private static Path file;

  @BeforeAll
  static void fill() {
    file = folder.resolve("ledger.sqlite");
    try (Ledger ledger = LedgerFixture.open(file)) {
      LedgerFixture.fillEveryTable(ledger);
    }
  }

  private static int rows(String table) throws SQLException {
    try (Connection connection = LedgerFixture.foreign(file);
        Statement statement = connection.createStatement();
        ResultSet count = statement.executeQuery("SELECT count(*) FROM " + table)) {
      return count.getInt(1);
    }
  }

  private static void assertRefused(String sql, String message) throws SQLException {
    try (Connection connection = LedgerFixture.foreign(file);
        Statement statement = connection.createStatement()) {
      assertThatThrownBy(() -> statement.executeUpdate(sql))
          .isInstanceOf(SQLException.class)
          .hasMessageContaining(message);
    }
  }

  @Test
  void everyTableIsOneOrTheOther() throws SQLException {
    List<String> tables = new ArrayList<>();
    try (Connection connection = LedgerFixture.foreign(file);
        Statement statement = connection.createStatement();
        ResultSet names =
            statement.executeQuery(
                "SELECT name FROM sqlite_master WHERE type = 'table'"
                    + " AND name NOT LIKE 'sqlite_%'")) {
      while (names.next()) {
        tables.add(names.getString(1));
      }
    }
    List<String> known = new ArrayList<>(STANDING);
    known.addAll(HISTORY);
    assertThat(tables).containsExactlyInAnyOrderElementsOf(known);
  }

  @ParameterizedTest
  @FieldSource("HISTORY")
  void historyIsNeitherChangedNorDeleted(String table) throws SQLException {
    int before = rows(table);
    assertThat(before).isPositive();
    String message = "the history table " + table + " is only ever added to";
    assertRefused("UPDATE " + table + " SET practice = 'mill-road'", message);
    assertRefused("DELETE FROM " + table, message);
    assertThat(rows(table)).isEqualTo(before);
  }

  /** REPLACE is a deletion in disguise. */
  @ParameterizedTest
  @FieldSource("HISTORY")
  void historyIsNotReplacedByThisProgram(String table) throws SQLException {
    try (Database database =
        Database.open(file, LedgerFixture.PRACTICE, LedgerFixture.CLOCK, WriteSteps.PASS)) {
      assertThatThrownBy(() -> database.update("REPLACE INTO " + table + " SELECT * FROM " + table))
          .isInstanceOf(LedgerException.class)
          .hasMessageContaining("the history table " + table + " is only ever added to");
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"photo", "patient", "visit"})
  void whatStandsIsNeverForgotten(String table) throws SQLException {
    assertThat(rows(table)).isPositive();
    assertRefused("DELETE FROM " + table, "rows of " + table + " are never deleted");
  }

  @Test
  void anObjectOfAnUnknownIntentIsRefused() {
    try (Database database =
        Database.open(file, LedgerFixture.PRACTICE, LedgerFixture.CLOCK, WriteSteps.PASS)) {
      assertThatThrownBy(
              () ->
                  database.update(
                      "INSERT INTO kept (practice, sop_uid, file_hash, pixel_hash, size,"
                          + " trimmed_columns, trimmed_rows, at)"
                          + " VALUES ('willow-lane', '1.2', 'a', 'b', 1, 0, 0, 'now')"))
          .isInstanceOf(LedgerException.class)
          .hasMessageContaining("FOREIGN KEY constraint failed");
    }
  }
}
