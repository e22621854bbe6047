package org.vestibule.store.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.sql.SQLException;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;
import org.vestibule.store.ledger.LedgerUnusableException.Trouble;

/** The names are SQLite's primary and extended result codes (sqlite.org/rescode.html). */
class TroublesTest {

  @ParameterizedTest
  @CsvSource({
    "SQLITE_FULL, DISK_FULL",
    "SQLITE_READONLY, MACHINE",
    "SQLITE_READONLY_DIRECTORY, MACHINE",
    "SQLITE_IOERR_WRITE, MACHINE",
    "SQLITE_CANTOPEN_ISDIR, MACHINE",
    "SQLITE_BUSY, HELD",
    "SQLITE_BUSY_SNAPSHOT, HELD",
    "SQLITE_CORRUPT, DAMAGE",
    "SQLITE_CORRUPT_VTAB, DAMAGE",
    "SQLITE_NOTADB, DAMAGE",
    "SQLITE_CONSTRAINT_FOREIGNKEY, ",
    "SQLITE_MISUSE, "
  })
  void sortsResultCodes(SQLiteErrorCode code, @Nullable Trouble trouble) {
    assertThat(Troubles.of(new SQLiteException("words", code)))
        .isEqualTo(Optional.ofNullable(trouble));
  }

  @Test
  void sortsOtherFailures() {
    assertThat(Troubles.of(new SQLException("words"))).isEmpty();
    assertThat(Troubles.of(new IOException("No space left on device")))
        .isEqualTo(Trouble.DISK_FULL);
    assertThat(Troubles.of(new IOException("words"))).isEqualTo(Trouble.MACHINE);
  }
}
