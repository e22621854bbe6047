package org.vestibule.store.ledger;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;

/** What SQLite itself finds wrong in a ledger's file, and where its layout is another. */
final class FileCheck {

  private FileCheck() {}

  static List<String> faults(Connection connection) throws SQLException {
    List<String> faults = new ArrayList<>();
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery("PRAGMA integrity_check")) {
      while (rows.next()) {
        if (!rows.getString(1).equals("ok")) {
          faults.add(rows.getString(1));
        }
      }
    }
    faults.addAll(LayoutCheck.differences(connection));
    if (faults.isEmpty()) {
      dangling(connection, faults);
      numbering(connection, faults);
    }
    return faults;
  }

  private static void dangling(Connection connection, List<String> faults) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery("PRAGMA foreign_key_check")) {
      while (rows.next()) {
        faults.add(
            "row "
                + rows.getLong("rowid")
                + " of table "
                + rows.getString("table")
                + " names a row of table "
                + rows.getString("parent")
                + " that is not there");
      }
    }
  }

  /** SQLite's own table sqlite_sequence, which no seal can cover (autoinc.html). */
  private static void numbering(Connection connection, List<String> faults) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet tables =
            statement.executeQuery(
                "SELECT t.name, s.seq FROM sqlite_master t LEFT JOIN sqlite_sequence s"
                    + " ON s.name = t.name WHERE t.type = 'table' AND t.sql LIKE"
                    + " '%AUTOINCREMENT%'")) {
      while (tables.next()) {
        if (last(connection, tables.getString(1)) > tables.getLong(2)) {
          faults.add("its table " + tables.getString(1) + " has lost count of its rows");
        }
      }
    }
  }

  private static long last(Connection connection, String table) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row =
            statement.executeQuery(
                "SELECT max(rowid) FROM \"" + table.replace("\"", "\"\"") + "\"")) {
      return row.getLong(1);
    }
  }
}
