package org.vestibule.store.ledger;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Statements of one connection that were used and wait to be used again: to make one takes longer
 * than to run it. Not for several threads.
 */
final class ReadyStatements {

  private static final int MOST = 64;

  private final Connection connection;

  /** The one that was used longest ago is the first. */
  private final Map<String, PreparedStatement> waiting = new LinkedHashMap<>();

  ReadyStatements(Connection connection) {
    this.connection = connection;
  }

  /** One that nobody else uses until it is given back. One that failed must be closed instead. */
  PreparedStatement take(String sql) throws SQLException {
    PreparedStatement statement = waiting.remove(sql);
    return statement == null ? connection.prepareStatement(sql) : statement;
  }

  /** Closes all that wait, as long as something is asked that wants the connection for itself. */
  void close() throws SQLException {
    for (PreparedStatement statement : waiting.values()) {
      statement.close();
    }
    waiting.clear();
  }

  /** Takes back a statement whose result has been read and closed. */
  void giveBack(String sql, PreparedStatement statement) throws SQLException {
    statement.clearParameters();
    PreparedStatement other = waiting.put(sql, statement);
    if (other != null) {
      other.close();
    }
    if (waiting.size() > MOST) {
      Iterator<PreparedStatement> eldest = waiting.values().iterator();
      PreparedStatement old = eldest.next();
      eldest.remove();
      old.close();
    }
  }
}
