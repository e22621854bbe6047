package org.vestibule.store.ledger;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.sqlite.SQLiteConfig;

/** Holds a ledger's tables, indexes and triggers against those of its layout. */
final class LayoutCheck {

  private LayoutCheck() {}

  /** What is not as the ledger's layout has it, in words. */
  static List<String> differences(Connection ledger) throws SQLException {
    Map<String, String> expected;
    try (Connection empty = new SQLiteConfig().createConnection("jdbc:sqlite::memory:");
        Statement statement = empty.createStatement()) {
      for (int version = 1; version <= version(ledger); version++) {
        for (String sql : Schema.statements(version)) {
          statement.execute(sql);
        }
      }
      expected = read(empty);
    }
    Map<String, String> found = read(ledger);
    List<String> differences = new ArrayList<>();
    expected.forEach(
        (what, sql) -> {
          if (!found.containsKey(what)) {
            differences.add("its " + what + " is gone");
          } else if (!sql.equals(found.get(what))) {
            differences.add("its " + what + " is not as this program makes it");
          }
        });
    found.keySet().stream()
        .filter(what -> !expected.containsKey(what))
        .forEach(what -> differences.add("it has a " + what + " that this program does not make"));
    return differences;
  }

  private static int version(Connection ledger) throws SQLException {
    try (Statement statement = ledger.createStatement();
        ResultSet rows = statement.executeQuery("PRAGMA user_version")) {
      return Math.min(rows.getInt(1), Schema.NEWEST);
    }
  }

  private static Map<String, String> read(Connection connection) throws SQLException {
    Map<String, String> read = new TreeMap<>();
    try (Statement statement = connection.createStatement();
        ResultSet rows =
            statement.executeQuery(
                "SELECT type || ' ' || name, tbl_name || ' ' || coalesce(sql, '')"
                    + " FROM sqlite_master")) {
      while (rows.next()) {
        read.put(rows.getString(1), rows.getString(2));
      }
    }
    return read;
  }
}
