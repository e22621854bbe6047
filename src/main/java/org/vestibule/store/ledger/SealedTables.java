package org.vestibule.store.ledger;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;

/**
 * Which tables are sealed: every one that the ledger has, but for the seals themselves. A table
 * that was sealed as history once stays so, even if its trigger is damaged.
 */
final class SealedTables {

  /**
   * A table that is sealed.
   *
   * @param history true if rows are only ever added to it
   */
  record Table(String name, boolean history) {

    /** The name as a statement takes it. */
    String quoted() {
      return "\"" + name.replace("\"", "\"\"") + "\"";
    }
  }

  private static final String ALL =
      "SELECT t.name AS name, EXISTS (SELECT 1 FROM sqlite_master g WHERE g.type = 'trigger'"
          + " AND g.name = t.name || '_no_update')"
          + " OR EXISTS (SELECT 1 FROM seal s WHERE s.sealed_table = t.name) AS history"
          + " FROM sqlite_master t"
          + " WHERE t.type = 'table' AND t.name NOT LIKE 'sqlite\\_%' ESCAPE '\\'"
          + " AND t.name NOT IN ('seal', 'seal_mark', 'seal_row') ORDER BY t.name";

  private SealedTables() {}

  static List<Table> of(Connection connection) throws SQLException {
    List<Table> tables = new ArrayList<>();
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(ALL)) {
      while (rows.next()) {
        tables.add(new Table(rows.getString("name"), rows.getBoolean("history")));
      }
    }
    return tables;
  }
}
