package org.vestibule.store.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;

/** The current row of a result, read by column name. */
final class Row {

  /** Makes a value of a row. */
  @FunctionalInterface
  interface Reader<T> {
    T read(Row row) throws SQLException;
  }

  private final ResultSet result;

  Row(ResultSet result) {
    this.result = result;
  }

  String text(String column) throws SQLException {
    String text = result.getString(column);
    if (text == null) {
      throw new LedgerException("the ledger has nothing in column " + column);
    }
    return text;
  }

  @Nullable String textOrNull(String column) throws SQLException {
    return result.getString(column);
  }

  int number(String column) throws SQLException {
    return result.getInt(column);
  }

  @Nullable Integer numberOrNull(String column) throws SQLException {
    int value = result.getInt(column);
    return result.wasNull() ? null : value;
  }

  long large(String column) throws SQLException {
    return result.getLong(column);
  }

  Instant time(String column) throws SQLException {
    return Instant.parse(text(column));
  }

  ContentHash hash(String column) throws SQLException {
    return new ContentHash(text(column));
  }
}
