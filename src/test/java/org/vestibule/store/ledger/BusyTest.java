package org.vestibule.store.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.store.steps.WriteSteps;

/** Another program holds the ledger's write lock longer than this one waits. */
class BusyTest {

  private static final int NO_WAIT_MILLIS = 1;

  @TempDir private Path folder;
  private Path file;
  private Connection other;

  @BeforeEach
  void hold() throws SQLException {
    file = folder.resolve("ledger.sqlite");
    LedgerFixture.open(file).close();
    other = LedgerFixture.foreign(file);
    run("BEGIN IMMEDIATE");
  }

  @AfterEach
  void letGo() throws SQLException {
    other.close();
  }

  private void run(String sql) throws SQLException {
    try (Statement statement = other.createStatement()) {
      statement.execute(sql);
    }
  }

  private Database impatient() {
    return Database.open(
        file, LedgerFixture.PRACTICE, LedgerFixture.CLOCK, WriteSteps.PASS, NO_WAIT_MILLIS);
  }

  @Test
  void aWriterSaysWhoIsInTheWayAndChangesNothing() throws SQLException {
    try (Database database = impatient()) {
      Arrivals arrivals = new Arrivals(database);
      SeenFile seen = new SeenFile(LedgerFixture.photo("a"), "a", 1, LedgerFixture.NOW);
      assertThatThrownBy(() -> arrivals.seen(seen))
          .isInstanceOf(UncheckedIOException.class)
          .hasMessage(
              "another program is writing the ledger and did not end in time: wait until it has"
                  + " ended, then run again; nothing of this step was changed");
      run("ROLLBACK");
      assertThat(new Photos(database).find(seen.hash())).isEmpty();
      assertThat(arrivals.seen(seen)).isTrue();
    }
  }

  @Test
  void aReaderIsNotHeldUp() {
    try (Database database = impatient()) {
      assertThat(new Photos(database).in(PhotoState.SEEN)).isEmpty();
      assertThat(new Events(database).latest(1)).hasSize(1);
    }
  }
}
