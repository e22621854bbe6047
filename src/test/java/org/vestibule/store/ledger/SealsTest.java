package org.vestibule.store.ledger;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.store.steps.WriteStep;
import org.vestibule.store.steps.WriteSteps;

/** Every row of every table is sealed with the transaction that wrote it. */
class SealsTest {

  @TempDir private Path folder;
  private Path file;

  @BeforeEach
  void begin() {
    file = folder.resolve("ledger.sqlite");
  }

  private void foreign(String... statements) throws SQLException {
    try (Connection connection = LedgerFixture.foreign(file);
        Statement statement = connection.createStatement()) {
      for (String sql : statements) {
        statement.execute(sql);
      }
    }
  }

  private List<String> ask(String sql) throws SQLException {
    List<String> answers = new ArrayList<>();
    try (Connection connection = LedgerFixture.foreign(file);
        Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(sql)) {
      while (rows.next()) {
        answers.add(rows.getString(1));
      }
    }
    return answers;
  }

  private List<String> broken() {
    try (Ledger ledger = LedgerFixture.open(file)) {
      return ledger.brokenSeals();
    }
  }

  private void fill() {
    try (Ledger ledger = LedgerFixture.open(file)) {
      LedgerFixture.fillEveryTable(ledger);
    }
  }

  @Test
  void whatTheProgramWritesIsSealedAndFitsTogether() {
    fill();
    try (Ledger ledger = LedgerFixture.open(file)) {
      assertThat(ledger.brokenSeals()).isEmpty();
      assertThat(ledger.faults()).isEmpty();
      assertThat(ledger.contradictions()).isEmpty();
    }
  }

  /** The format written out by hand, so that a change of it is seen. */
  @Test
  void theDigestIsSha256OverNamesKindsAndBytes() throws Exception {
    LedgerFixture.open(file).close();
    String at = ask("SELECT created_at FROM identity").get(0);
    MessageDigest sha = MessageDigest.getInstance("SHA-256");
    List<String> parts =
        List.of("<identity", "=practice", "t" + LedgerFixture.PRACTICE, "=created_at", "t" + at);
    for (String part : parts) {
      sha.update((byte) part.charAt(0));
      sha.update(new byte[] {0, 0, 0, (byte) (part.length() - 1)});
      sha.update(part.substring(1).getBytes(US_ASCII));
    }
    assertThat(ask("SELECT digest FROM seal WHERE sealed_table = 'identity'"))
        .containsExactly(HexFormat.of().formatHex(sha.digest()));
  }

  /** One value of every column of every table, one after the other. */
  @Test
  void anyValueThatIsChangedIsTold() throws Exception {
    fill();
    int changed = 0;
    for (String table :
        ask(
            "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'"
                + " AND name NOT LIKE 'seal%'")) {
      for (String column : ask("SELECT name FROM pragma_table_info('" + table + "')")) {
        byte[] sound = Files.readAllBytes(file);
        List<String> triggers = new ArrayList<>(List.of("PRAGMA ignore_check_constraints = 1"));
        ask("SELECT name FROM sqlite_master WHERE type = 'trigger'")
            .forEach(trigger -> triggers.add("DROP TRIGGER " + trigger));
        triggers.add(
            String.format(
                Locale.ROOT,
                "UPDATE \"%1$s\" SET \"%2$s\" = CASE WHEN typeof(\"%2$s\") = 'integer'"
                    + " THEN \"%2$s\" + 1000 ELSE coalesce(\"%2$s\", '') || 'x' END WHERE rowid = 1",
                table,
                column));
        foreign(triggers.toArray(String[]::new));
        // The file is read with its triggers gone, which LayoutCheck tells; here the rows count.
        assertThat(sealsOf(file)).as(table + "." + column).isNotEmpty();
        Files.deleteIfExists(folder.resolve("ledger.sqlite-wal"));
        Files.write(file, sound);
        changed++;
      }
    }
    assertThat(changed).isGreaterThan(150);
    assertThat(broken()).isEmpty();
  }

  @Test
  void tableAndRowsAreNamed() throws SQLException {
    try (Ledger ledger = LedgerFixture.open(file)) {
      for (int n = 0; n < 2 * Seals.MARK_EVERY + 50; n++) {
        ledger.events().add("A. Finch", "looked", null, "" + n);
      }
    }
    long first = Long.parseLong(ask("SELECT number FROM event WHERE details = '0'").get(0));
    foreign(
        "DROP TRIGGER event_no_update",
        "UPDATE event SET details = 'x' WHERE number = " + (first + 20),
        "UPDATE event SET details = 'x' WHERE number = " + (first + 205));
    assertThat(broken())
        .containsExactly(
            "among rows 1 to 100 of the ledger's table event something is not what was written",
            "among rows 201 to "
                + (2 * Seals.MARK_EVERY + 50 + first - 1)
                + " of the ledger's table event something is not what was written");
  }

  @Test
  void aRowThatStandsForNowIsNamed() throws SQLException {
    fill();
    foreign("UPDATE photo SET first_seen_at = '2020-01-01T00:00:00Z' WHERE rowid = 2");
    assertThat(broken())
        .containsExactly("row 2 of the ledger's table photo is not what was written");
  }

  @Test
  void rowsThatAreGoneOrAddedAreTold() throws SQLException {
    fill();
    foreign(
        "DROP TRIGGER event_no_delete",
        "DELETE FROM event WHERE number = (SELECT max(number) FROM event)",
        "DELETE FROM waiting",
        "INSERT INTO facts (practice, hash, kind, json, recorded_at) VALUES ('p', 'h', 'k', '', '')");
    assertThat(broken())
        .containsExactly(
            "1 row of the ledger's table event is gone",
            "the ledger's table facts has 1 row more than this program wrote",
            "1 row of the ledger's table waiting is gone");
  }

  @Test
  void aSealThatIsHitIsTold() throws SQLException {
    fill();
    foreign("UPDATE seal SET digest = replace(digest, 'a', 'b') WHERE sealed_table = 'kept'");
    assertThat(broken())
        .containsExactly(
            "among rows 1 to 2 of the ledger's table kept something is not what was written");
    foreign("UPDATE seal SET sealed_table = 'kepd' WHERE sealed_table = 'kept'");
    assertThat(broken())
        .containsExactly(
            "the ledger's table kept has 2 rows more than this program wrote",
            "the ledger has a seal for a table that it does not have");
  }

  @Test
  void onlyWhatIsNewIsReadAgain() throws SQLException {
    fill();
    foreign("DROP TRIGGER event_no_update", "UPDATE event SET details = 'x' WHERE number = 1");
    try (Ledger ledger = LedgerFixture.open(file)) {
      ledger.events().add("A. Finch", "looked", null, "");
      assertThat(ledger.brokenSeals())
          .as("a later seal does not make an earlier damage good")
          .singleElement()
          .asString()
          .startsWith("among rows 1 to ");
    }
  }

  /** A transaction that is rolled back leaves nothing to be sealed. */
  @Test
  void aWriteThatIsCutOffLeavesTheSealsAsTheyWere() {
    fill();
    boolean[] cut = {false};
    WriteSteps steps =
        step -> {
          if (cut[0] && step == WriteStep.LEDGER_COMMITTING) {
            throw new IOException("the disk is gone");
          }
        };
    try (Ledger ledger = LedgerFixture.open(file, steps)) {
      cut[0] = true;
      try {
        ledger.events().add("A. Finch", "looked", null, "");
        throw new AssertionError("must fail");
      } catch (LedgerUnusableException expected) {
        cut[0] = false;
      }
      ledger.events().add("A. Finch", "looked again", null, "");
      assertThat(ledger.brokenSeals()).isEmpty();
    }
  }

  /** Tables that somebody adds later are covered by the schema alone. */
  @Test
  void aTableThatIsAddedLaterIsSealedByItself() throws SQLException {
    fill();
    foreign(
        "CREATE TABLE parcel (practice TEXT NOT NULL, words TEXT)",
        "CREATE TRIGGER parcel_no_update BEFORE UPDATE ON parcel BEGIN SELECT RAISE(ABORT, ''); END",
        "CREATE TABLE shelf (practice TEXT NOT NULL, words TEXT)");
    try (Database database =
        Database.open(file, LedgerFixture.PRACTICE, LedgerFixture.CLOCK, WriteSteps.PASS)) {
      database.sealing();
      for (String table : List.of("parcel", "shelf")) {
        database.update("INSERT INTO " + table + " VALUES ('willow-lane', 'one')");
        database.update("INSERT INTO " + table + " VALUES ('willow-lane', 'two')");
      }
      database.update("UPDATE shelf SET words = 'three' WHERE words = 'one'");
      database.update("DELETE FROM shelf WHERE words = 'two'");
      assertThat(database.with(SealCheck::broken)).isEmpty();
      // REPLACE deletes, and a DELETE without a condition may be done at a stroke.
      database.update("REPLACE INTO shelf (rowid, practice, words) VALUES (1, 'willow-lane', 'r')");
      assertThat(database.with(SealCheck::broken)).isEmpty();
      database.update("DELETE FROM shelf");
      assertThat(database.with(SealCheck::broken)).isEmpty();
      database.update("INSERT INTO shelf VALUES ('willow-lane', 'four')");
    }
    foreign(
        "DROP TRIGGER parcel_no_update",
        "UPDATE parcel SET words = 'x' WHERE rowid = 1",
        "UPDATE shelf SET words = 'x'");
    assertThat(broken())
        .containsExactly(
            "among rows 1 to 2 of the ledger's table parcel something is not what was written",
            "row 1 of the ledger's table shelf is not what was written");
  }

  /** What seals go by is the number that SQLite gives each row. */
  @Test
  void everyTableHasRowNumbers() throws SQLException {
    fill();
    assertThat(ask("SELECT name FROM pragma_table_list WHERE wr = 1")).isEmpty();
  }

  @Test
  void copiesAndACompactedFileAreNotCalledDamaged() throws SQLException {
    fill();
    Path copy = folder.resolve("copy.sqlite");
    try (Ledger ledger = LedgerFixture.open(file)) {
      ledger.copyTo(copy);
    }
    assertThat(LedgerCopy.faults(copy)).isEmpty();
    foreign("VACUUM");
    arriveLater();
    assertThat(broken()).isEmpty();
  }

  private void arriveLater() {
    try (Ledger ledger = LedgerFixture.open(file)) {
      LedgerFixture.arrive(ledger, "later.jpg");
    }
  }

  @Test
  void aCopyWhoseRowWasHitIsFaulty() throws SQLException {
    fill();
    foreign("DROP TRIGGER event_no_update", "UPDATE event SET details = 'x' WHERE number = 1");
    foreign(
        "CREATE TRIGGER event_no_update BEFORE UPDATE ON event\nBEGIN SELECT RAISE(ABORT, 'the"
            + " history table event is only ever added to'); END");
    assertThat(LedgerCopy.faults(file))
        .singleElement()
        .asString()
        .startsWith("among rows 1 to ")
        .endsWith(" of the ledger's table event something is not what was written");
  }

  @Test
  void whatSomebodyTakesAsItIsIsSealedAnew() throws SQLException {
    fill();
    foreign("UPDATE photo SET size = 7 WHERE rowid = 2");
    try (Ledger ledger = LedgerFixture.open(file)) {
      assertThat(ledger.brokenSeals()).hasSize(1);
      ledger.sealAnew("A. Finch", "no copy is left");
      assertThat(ledger.brokenSeals()).isEmpty();
      assertThat(ledger.events().latest(1))
          .extracting(EventRow::who, EventRow::what, EventRow::details)
          .containsExactly(
              org.assertj.core.groups.Tuple.tuple(
                  "A. Finch", "ledger taken as it is", "no copy is left"));
      assertThat(ledger.contradictions())
          .containsExactly(
              "photographs have another size than the files that arrived (at least "
                  + LedgerFixture.photo("waits.jpg").brief()
                  + ")");
    }
  }

  @Test
  void triggersIndexesAndTablesAreThoseOfTheProgram() throws SQLException {
    LedgerFixture.open(file).close();
    foreign(
        "DROP TRIGGER kept_no_delete",
        "DROP INDEX photo_state",
        "CREATE TABLE more (practice TEXT)");
    try (Ledger ledger = LedgerFixture.open(file)) {
      assertThat(ledger.faults())
          .containsExactly(
              "its index photo_state is gone",
              "its trigger kept_no_delete is gone",
              "it has a table more that this program does not make");
    }
  }

  @Test
  void aRowThatNamesAnotherWhichIsNotThereIsAFault() throws SQLException {
    fill();
    foreign("INSERT INTO photo_mark (practice, kind, value, hash) VALUES ('p', 'k', 'v', 'h')");
    try (Ledger ledger = LedgerFixture.open(file)) {
      assertThat(ledger.faults())
          .singleElement()
          .asString()
          .matches("row \\d+ of table photo_mark names a row of table photo that is not there");
    }
  }

  @Test
  void aNumberingThatIsHitIsAFault() throws SQLException {
    fill();
    foreign("UPDATE sqlite_sequence SET name = 'chan''e' WHERE name = 'change'");
    foreign("UPDATE sqlite_sequence SET seq = 1 WHERE name = 'event'");
    try (Ledger ledger = LedgerFixture.open(file)) {
      assertThat(ledger.faults())
          .containsExactly(
              "its table event has lost count of its rows",
              "its table change has lost count of its rows");
    }
  }

  /** The seals alone, of a file whose triggers were taken away. */
  private static List<String> sealsOf(Path file) throws SQLException {
    try (Connection connection = LedgerFixture.foreign(file)) {
      return SealCheck.broken(connection);
    }
  }
}
