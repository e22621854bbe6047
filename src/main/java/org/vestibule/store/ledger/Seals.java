package org.vestibule.store.ledger;

import java.sql.SQLException;
import java.util.List;
import java.util.Locale;
import org.vestibule.store.ledger.SealedTables.Table;

/**
 * Seals what a transaction wrote, within that transaction: a history table by a chain of digests
 * with a mark at every {@value #MARK_EVERY}th row, every other table by one digest a row. Only rows
 * that were written are read. Triggers of this connection note them, whoever wrote the statement.
 */
final class Seals {

  /** How many rows of a history table lie between two marks; a damage is told as exactly. */
  static final int MARK_EVERY = 100;

  /** How far a history table is sealed. */
  private record Head(long rows, long lastRow, String digest) {}

  private final Database database;
  private List<Table> tables = List.of();

  Seals(Database database) {
    this.database = database;
  }

  /** Lets this connection note what is written from now on. Outside of a transaction. */
  void watch() {
    if (!tables.isEmpty()) {
      return;
    }
    List<Table> found = database.with(SealedTables::of);
    database.execute("CREATE TEMP TABLE written (name TEXT NOT NULL, row_number INTEGER NOT NULL)");
    for (Table table : found) {
      note(table, "INSERT", "NEW");
      if (!table.history()) {
        note(table, "UPDATE", "OLD");
        note(table, "UPDATE", "NEW");
        note(table, "DELETE", "OLD");
      }
    }
    tables = found;
  }

  private void note(Table table, String deed, String which) {
    String trigger = "\"written " + table.name() + " " + deed + " " + which + "\"";
    String values = "('" + table.name().replace("'", "''") + "', " + which + ".rowid)";
    database.execute(
        String.format(
            Locale.ROOT,
            "CREATE TEMP TRIGGER %s AFTER %s ON main.%s BEGIN INSERT INTO written VALUES %s; END",
            trigger,
            deed,
            table.quoted(),
            values));
  }

  /** Seals what was written since the transaction began. */
  void seal() {
    List<String> written =
        database.list("SELECT DISTINCT name FROM temp.written", row -> row.text("name"));
    if (written.isEmpty()) {
      return;
    }
    for (Table table : tables) {
      if (!written.contains(table.name())) {
        continue;
      }
      if (table.history()) {
        history(table);
      } else {
        standing(table);
      }
    }
    database.execute("DELETE FROM temp.written");
  }

  /** Seals everything from the first row on, as it is now, whatever was sealed before. */
  static void anew(Database database) {
    Seals seals = new Seals(database);
    for (String table : List.of("seal", "seal_mark", "seal_row")) {
      database.execute("DELETE FROM " + table);
    }
    for (Table table : database.with(SealedTables::of)) {
      seals.all(table);
    }
  }

  /**
   * Seals what a new layout brought: the rows that it added to history, and every other table as it
   * stands now.
   */
  static void migrated(Database database) {
    Seals seals = new Seals(database);
    database.with(SealedTables::of).forEach(seals::all);
  }

  private void all(Table table) {
    if (table.history()) {
      history(table);
      return;
    }
    database.update("DELETE FROM seal_row WHERE sealed_table = ?", table.name());
    database.each(
        "SELECT rowid, * FROM " + table.quoted(),
        rows -> {
          RowDigest digest = new RowDigest(rows, 2);
          while (rows.next()) {
            put(table, rows.getLong(1), digest.after(table.name()));
          }
        });
  }

  private void history(Table table) {
    Head before = head(table);
    Head[] head = {before};
    database.each(
        "SELECT rowid, * FROM " + table.quoted() + " WHERE rowid > ? ORDER BY rowid",
        rows -> {
          RowDigest digest = new RowDigest(rows, 2);
          while (rows.next()) {
            head[0] = new Head(head[0].rows() + 1, rows.getLong(1), digest.after(head[0].digest()));
            if (head[0].rows() % MARK_EVERY == 0) {
              mark(table, head[0]);
            }
          }
        },
        before.lastRow());
    database.update(
        "INSERT INTO seal (practice, sealed_table, row_count, last_row, digest)"
            + " VALUES (?, ?, ?, ?, ?) ON CONFLICT (practice, sealed_table) DO UPDATE SET"
            + " row_count = excluded.row_count, last_row = excluded.last_row,"
            + " digest = excluded.digest",
        database.practice(),
        table.name(),
        head[0].rows(),
        head[0].lastRow(),
        head[0].digest());
  }

  private Head head(Table table) {
    return database
        .one(
            "SELECT row_count, last_row, digest FROM seal WHERE practice = ? AND sealed_table = ?",
            row -> new Head(row.large("row_count"), row.large("last_row"), row.text("digest")),
            database.practice(),
            table.name())
        .orElse(new Head(0, 0, table.name()));
  }

  private void mark(Table table, Head head) {
    database.update(
        "INSERT INTO seal_mark (practice, sealed_table, row_count, digest) VALUES (?, ?, ?, ?)",
        database.practice(),
        table.name(),
        head.rows(),
        head.digest());
  }

  private void standing(Table table) {
    List<Long> numbers =
        database.list(
            "SELECT DISTINCT row_number FROM temp.written WHERE name = ?",
            row -> row.large("row_number"),
            table.name());
    for (long number : numbers) {
      database.update(
          "DELETE FROM seal_row WHERE practice = ? AND sealed_table = ? AND row_number = ?",
          database.practice(),
          table.name(),
          number);
      database.each(
          "SELECT * FROM " + table.quoted() + " WHERE rowid = ?",
          rows -> {
            if (rows.next()) {
              put(table, number, new RowDigest(rows, 1).after(table.name()));
            }
          },
          number);
    }
  }

  private void put(Table table, long number, String digest) throws SQLException {
    database.update(
        "INSERT INTO seal_row (practice, sealed_table, row_number, digest) VALUES (?, ?, ?, ?)",
        database.practice(),
        table.name(),
        number,
        digest);
  }
}
