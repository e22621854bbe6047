package org.vestibule.store.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.store.steps.WriteSteps;

/**
 * What SQLite itself says is in force; values as in "PRAGMA Statements", sqlite.org/pragma.html.
 */
class DatabaseSettingsTest {

  @TempDir private Path folder;
  private Path file;
  private Database database;

  @BeforeEach
  void open() {
    file = folder.resolve("ledger.sqlite");
    database = Database.open(file, LedgerFixture.PRACTICE, LedgerFixture.CLOCK, WriteSteps.PASS);
    database.execute("CREATE TABLE t (a INTEGER PRIMARY KEY, practice TEXT)");
  }

  @AfterEach
  void close() {
    database.close();
  }

  private String pragma(String name, String column) {
    return database.one("PRAGMA " + name, row -> row.text(column)).orElseThrow();
  }

  @Test
  void theJournalIsWrittenAhead() {
    assertThat(pragma("journal_mode", "journal_mode")).isEqualTo("wal");
  }

  /**
   * Bytes 18 and 19 are 2 in WAL mode: "Database File Format" 1.3.3, sqlite.org/fileformat2.html.
   */
  @Test
  void theFileItselfSaysSo() throws IOException {
    byte[] head = Files.readAllBytes(file);
    assertThat(head[18]).isEqualTo((byte) 2);
    assertThat(head[19]).isEqualTo((byte) 2);
  }

  /** FULL is 2: in WAL mode NORMAL (1) may lose the last transactions with the power. */
  @Test
  void everyCommitIsSynced() {
    assertThat(pragma("synchronous", "synchronous")).isEqualTo("2");
  }

  @Test
  void aWriterWaitsFifteenSecondsForAnother() {
    assertThat(pragma("busy_timeout", "timeout")).isEqualTo("15000");
  }

  @Test
  void foreignKeysAreEnforced() {
    assertThat(pragma("foreign_keys", "foreign_keys")).isEqualTo("1");
  }

  /**
   * Else REPLACE would delete rows of history past the triggers: lang_createtrigger, lang_conflict.
   */
  @Test
  void replacingFiresDeleteTriggers() {
    assertThat(pragma("recursive_triggers", "recursive_triggers")).isEqualTo("1");
  }
}
