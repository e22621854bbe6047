package org.vestibule.store.ledger;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.vestibule.store.ledger.SealedTables.Table;

/** Reads every row of a ledger again and holds it against its seal. */
final class SealCheck {

  /** So many rows of one table are named one by one, and the others counted. */
  private static final int NAMED = 5;

  private final Connection connection;
  private final List<String> broken = new ArrayList<>();

  private SealCheck(Connection connection) {
    this.connection = connection;
  }

  /** What is not as it was written, in words; empty for a ledger from before there were seals. */
  static List<String> broken(Connection connection) throws SQLException {
    SealCheck check = new SealCheck(connection);
    if (check.count("SELECT count(*) FROM sqlite_master WHERE name = 'seal'") == 0) {
      return List.of();
    }
    List<Table> tables = SealedTables.of(connection);
    for (Table table : tables) {
      if (table.history()) {
        check.history(table);
      } else {
        check.standing(table);
      }
    }
    check.strangers(tables);
    return check.broken;
  }

  private long count(String sql, Object... values) throws SQLException {
    try (PreparedStatement statement = prepared(sql, values);
        ResultSet rows = statement.executeQuery()) {
      return rows.getLong(1);
    }
  }

  private PreparedStatement prepared(String sql, Object... values) throws SQLException {
    PreparedStatement statement = connection.prepareStatement(sql);
    for (int at = 0; at < values.length; at++) {
      statement.setObject(at + 1, values[at]);
    }
    return statement;
  }

  /** Digests by the number of rows that they are over, the last one over all that are sealed. */
  private Map<Long, String> marks(Table table) throws SQLException {
    Map<Long, String> marks = new LinkedHashMap<>();
    try (PreparedStatement statement =
            prepared(
                "SELECT row_count, digest FROM seal_mark WHERE sealed_table = ?1 UNION"
                    + " SELECT row_count, digest FROM seal WHERE sealed_table = ?1"
                    + " ORDER BY row_count",
                table.name());
        ResultSet rows = statement.executeQuery()) {
      while (rows.next()) {
        if (marks.put(rows.getLong(1), rows.getString(2)) != null) {
          broken.add("the seals of the ledger's table " + table.name() + " contradict each other");
        }
      }
    }
    return marks;
  }

  private void history(Table table) throws SQLException {
    Iterator<Map.Entry<Long, String>> marks = marks(table).entrySet().iterator();
    try (Statement statement = connection.createStatement();
        ResultSet rows =
            statement.executeQuery("SELECT * FROM " + table.quoted() + " ORDER BY rowid")) {
      RowDigest row = new RowDigest(rows, 1);
      long read = 0;
      String digest = table.name();
      while (marks.hasNext()) {
        Map.Entry<Long, String> mark = marks.next();
        long from = read + 1;
        if (mark.getKey() - read > Seals.MARK_EVERY) {
          broken.add("seals of the ledger's table " + table.name() + " are gone");
        }
        while (read < mark.getKey() && rows.next()) {
          read++;
          digest = row.after(digest);
        }
        if (read < mark.getKey()) {
          gone(table, mark.getKey() - read);
          return;
        }
        if (!digest.equals(mark.getValue())) {
          changed(table, from, read);
          digest = Objects.toString(mark.getValue(), "");
        }
      }
      unsealed(table, rows);
    }
  }

  private void changed(Table table, long from, long to) {
    broken.add(
        from >= to
            ? "row " + to + " of the ledger's table " + table.name() + " is not what was written"
            : "among rows "
                + from
                + " to "
                + to
                + " of the ledger's table "
                + table.name()
                + " something is not what was written");
  }

  private void gone(Table table, long rows) {
    broken.add(
        (rows == 1 ? "1 row" : rows + " rows")
            + " of the ledger's table "
            + table.name()
            + (rows == 1 ? " is gone" : " are gone"));
  }

  private void unsealed(Table table, ResultSet rows) throws SQLException {
    long more = 0;
    while (rows.next()) {
      more++;
    }
    if (more > 0) {
      broken.add(
          "the ledger's table "
              + table.name()
              + " has "
              + (more == 1 ? "1 row" : more + " rows")
              + " more than this program wrote");
    }
  }

  private void standing(Table table) throws SQLException {
    List<Long> wrong = new ArrayList<>();
    long sealed = 0;
    try (PreparedStatement statement =
            prepared(
                "SELECT t.rowid, s.digest, t.* FROM "
                    + table.quoted()
                    + " t LEFT JOIN seal_row s ON s.practice = t.practice AND s.sealed_table = ?"
                    + " AND s.row_number = t.rowid ORDER BY t.rowid",
                table.name());
        ResultSet rows = statement.executeQuery()) {
      RowDigest row = new RowDigest(rows, 3);
      while (rows.next()) {
        @Nullable String kept = rows.getString(2);
        sealed += kept == null ? 0 : 1;
        if (!row.after(table.name()).equals(kept)) {
          wrong.add(rows.getLong(1));
        }
      }
    }
    wrong.stream().limit(NAMED).forEach(number -> changed(table, number, number));
    if (wrong.size() > NAMED) {
      broken.add(
          "and "
              + (wrong.size() - NAMED)
              + " more rows of the ledger's table "
              + table.name()
              + " are not what was written");
    }
    long lost =
        count("SELECT count(*) FROM seal_row WHERE sealed_table = ?", table.name()) - sealed;
    if (lost > 0) {
      gone(table, lost);
    }
  }

  /** A seal whose table's name was hit. */
  private void strangers(List<Table> tables) throws SQLException {
    List<String> names = tables.stream().map(Table::name).toList();
    try (Statement statement = connection.createStatement();
        ResultSet rows =
            statement.executeQuery(
                "SELECT sealed_table FROM seal UNION SELECT sealed_table FROM seal_mark"
                    + " UNION SELECT sealed_table FROM seal_row")) {
      while (rows.next()) {
        if (!names.contains(rows.getString(1))) {
          broken.add("the ledger has a seal for a table that it does not have");
        }
      }
    }
  }
}
