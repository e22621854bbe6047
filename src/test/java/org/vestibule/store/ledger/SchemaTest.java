package org.vestibule.store.ledger;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.vestibule.store.ledger.LedgerFixture.CLOCK;
import static org.vestibule.store.ledger.LedgerFixture.PRACTICE;
import static org.vestibule.store.ledger.LedgerFixture.uids;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.base.Outcome;
import org.vestibule.store.steps.WriteStep;
import org.vestibule.store.steps.WriteSteps;

/** Layouts of the ledger's file: begun, brought forward, or refused. */
class SchemaTest {

  @TempDir private Path folder;
  private Path file;

  @BeforeEach
  void begin() {
    file = folder.resolve("ledger.sqlite");
  }

  private static Outcome<Ledger> open(Path file, String practice) {
    return Ledger.open(file, practice, uids(), CLOCK, WriteSteps.PASS);
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

  private void run(String sql) throws SQLException {
    try (Connection connection = LedgerFixture.foreign(file);
        Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  @Test
  void aNewLedgerHasTheNewestLayoutAndSaysWhoseItIs() throws SQLException {
    open(file, PRACTICE).orThrow().close();
    assertThat(ask("PRAGMA user_version")).containsExactly("" + Schema.NEWEST);
    assertThat(ask("SELECT practice FROM identity")).containsExactly(PRACTICE);
    assertThat(ask("SELECT what FROM event ORDER BY number"))
        .containsExactlyElementsOf(
            IntStream.rangeClosed(1, Schema.NEWEST).mapToObj(n -> "ledger layout " + n).toList());
  }

  @Test
  void openingItAgainAddsNothing() throws SQLException {
    open(file, PRACTICE).orThrow().close();
    open(file, PRACTICE).orThrow().close();
    assertThat(ask("SELECT what FROM event")).hasSize(Schema.NEWEST);
    assertThat(ask("SELECT practice FROM identity")).hasSize(1);
  }

  /** Whoever adds a layout adds the sample of the older one to this test. */
  @Test
  void thereIsNoLayoutBeyondTheNewest() throws IOException {
    try (InputStream next =
        Schema.class.getResourceAsStream("schema-" + (Schema.NEWEST + 1) + ".sql")) {
      assertThat(next).isNull();
    }
  }

  /** A ledger as layout 1 left it, with a patient. */
  @Test
  void layout1BecomesTheNewestAndKeepsWhatItHolds() throws Exception {
    try (InputStream first = Schema.class.getResourceAsStream("schema-1.sql")) {
      for (String statement :
          new String(first.readAllBytes(), StandardCharsets.UTF_8).split("\\R\\R", -1)) {
        if (!statement.isBlank() && !statement.startsWith("--")) {
          run(statement);
        }
      }
    }
    run("INSERT INTO identity VALUES ('" + PRACTICE + "', '2026-01-01T00:00:00Z')");
    run(
        "INSERT INTO patient VALUES ('"
            + PRACTICE
            + "', '', 'P1', 'Tallgrass^Orla', NULL, 'F', '')");
    run(
        "INSERT INTO facts (practice, hash, kind, json, recorded_at) VALUES ('"
            + PRACTICE
            + "', 'ab', 'shot', 's1', '2026-01-01T00:00:00Z')");
    run(
        "INSERT INTO photo (practice, hash, size, first_seen_at, state) VALUES ('"
            + PRACTICE
            + "', 'ab', 1, '2026-01-01T00:00:00Z', 'SEEN')");
    run("PRAGMA user_version = 1");
    open(file, PRACTICE).orThrow().close();
    assertThat(ask("PRAGMA user_version")).containsExactly("" + Schema.NEWEST);
    assertThat(ask("SELECT name FROM patient")).containsExactly("Tallgrass^Orla");
    assertThat(ask("SELECT count(*) FROM consent")).containsExactly("0");
    assertThat(ask("SELECT hash FROM photo_mark WHERE kind = 'shot' AND value = 's1'"))
        .as("shots are found by their marks")
        .containsExactly("ab");
  }

  /** A file that holds nothing, as SQLite makes it before the first transaction. */
  @Test
  void anEmptyFileIsBegun() throws Exception {
    Files.write(file, new byte[0]);
    open(file, PRACTICE).orThrow().close();
    assertThat(ask("PRAGMA user_version")).containsExactly("" + Schema.NEWEST);
  }

  @Test
  void aBeginningThatIsCutOffIsBegunAgain() throws SQLException {
    WriteSteps cut =
        step -> {
          if (step == WriteStep.LEDGER_COMMITTING) {
            throw new IOException("the disk is gone");
          }
        };
    assertThatThrownBy(() -> Ledger.open(file, PRACTICE, uids(), CLOCK, cut))
        .isInstanceOf(LedgerUnusableException.class)
        .hasMessage("the ledger could not be written");
    assertThat(ask("SELECT name FROM sqlite_master")).isEmpty();
    open(file, PRACTICE).orThrow().close();
    assertThat(ask("PRAGMA user_version")).containsExactly("" + Schema.NEWEST);
  }

  @Test
  void aNewerLayoutIsRefusedAndNotTouched() throws Exception {
    open(file, PRACTICE).orThrow().close();
    run("PRAGMA user_version = 99");
    byte[] before = Files.readAllBytes(file);
    assertThat(open(file, PRACTICE))
        .isEqualTo(
            Outcome.refused(
                "the ledger has layout 99, and this program knows layouts up to " + Schema.NEWEST,
                "use the program version that wrote it, or a newer one; nothing was changed"));
    assertThat(Files.readAllBytes(file)).isEqualTo(before);
  }

  @Test
  void theLedgerOfAnotherPracticeIsRefused() {
    open(file, PRACTICE).orThrow().close();
    assertThat(open(file, "mill-road"))
        .isEqualTo(
            Outcome.refused(
                "the ledger belongs to practice \"willow-lane\", but the settings say"
                    + " \"mill-road\"",
                "correct the practice id in the settings, or use another home folder"));
  }

  @Test
  void aPracticeWithoutAnIdIsRefusedBeforeAnythingIsMade() {
    assertThat(open(file, " "))
        .isEqualTo(
            Outcome.refused(
                "the practice has no id", "name one in the settings, such as \"main-street\""));
    assertThat(file).doesNotExist();
  }

  @Test
  void aFileThatIsNoLedgerIsNotWrittenTo() throws IOException {
    byte[] text =
        "these are somebody's notes, and longer than the head of a database file; "
            .repeat(3)
            .getBytes(UTF_8);
    Files.write(file, text);
    assertThatThrownBy(() -> open(file, PRACTICE))
        .isInstanceOf(LedgerUnusableException.class)
        .hasMessageContaining("file is not a database");
    assertThat(Files.readAllBytes(file)).isEqualTo(text);
  }

  @Test
  void anyFolderNameWillDo() throws IOException {
    for (String name : List.of("Praxis Dr. Über", "100% #1; a=b&c", "what?cache=shared", "a'b")) {
      Path home = Files.createDirectories(folder.resolve(name));
      open(home.resolve("ledger.sqlite"), PRACTICE).orThrow().close();
      assertThat(home.resolve("ledger.sqlite")).as(name).isRegularFile();
    }
  }

  @Test
  void everyTableHasThePractice() throws SQLException {
    open(file, PRACTICE).orThrow().close();
    List<String> tables =
        ask("SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'");
    assertThat(tables).hasSizeGreaterThan(15);
    for (String table : tables) {
      assertThat(
              ask(
                  "SELECT name FROM pragma_table_info('"
                      + table
                      + "') WHERE name = 'practice'"
                      + " AND type = 'TEXT' AND \"notnull\" = 1"))
          .as(table)
          .hasSize(1);
    }
  }

  @Test
  void everyRowHasThePractice() throws SQLException {
    try (Ledger ledger = open(file, PRACTICE).orThrow()) {
      LedgerFixture.fillEveryTable(ledger);
    }
    for (String table :
        ask(
            "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'"
                + " AND name <> 'seal_mark'")) {
      assertThat(ask("SELECT DISTINCT practice FROM " + table)).as(table).containsExactly(PRACTICE);
    }
  }
}
