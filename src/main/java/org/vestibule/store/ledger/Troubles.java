package org.vestibule.store.ledger;

import java.io.IOException;
import java.sql.SQLException;
import java.util.Optional;
import org.sqlite.SQLiteErrorCode;
import org.vestibule.store.ledger.LedgerUnusableException.Trouble;

/** Sorts SQLite's result codes (sqlite.org/rescode.html) by what a person has to deal with. */
final class Troubles {

  /** The low byte is the primary result code; the others say more about it. */
  private static final int PRIMARY = 0xFF;

  private Troubles() {}

  /** Empty if the code speaks of a statement and not of the machine: then it is a bug. */
  static Optional<Trouble> of(SQLException failure) {
    return switch (SQLiteErrorCode.getErrorCode(failure.getErrorCode() & PRIMARY)) {
      case SQLITE_FULL -> Optional.of(Trouble.DISK_FULL);
      case SQLITE_PERM,
          SQLITE_NOMEM,
          SQLITE_READONLY,
          SQLITE_IOERR,
          SQLITE_CANTOPEN,
          SQLITE_PROTOCOL ->
          Optional.of(Trouble.MACHINE);
      case SQLITE_BUSY -> Optional.of(Trouble.HELD);
      case SQLITE_CORRUPT, SQLITE_NOTADB -> Optional.of(Trouble.DAMAGE);
      default -> Optional.empty();
    };
  }

  static Trouble of(IOException failure) {
    return String.valueOf(failure.getMessage()).contains("No space left")
        ? Trouble.DISK_FULL
        : Trouble.MACHINE;
  }
}
