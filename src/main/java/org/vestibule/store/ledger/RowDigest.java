package org.vestibule.store.ledger;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import org.vestibule.base.ContentHash;

/**
 * Digests of a result's rows: SHA-256 over the name, kind and bytes of each column that holds
 * something. Columns without a value leave no trace, so that one that is added later changes no
 * digest of an older row.
 */
final class RowDigest {

  private final ResultSet rows;
  private final int first;
  private final List<byte[]> names = new ArrayList<>();
  private final MessageDigest sha;

  /**
   * @param first number of the first column that counts, from 1; all after it count too
   */
  RowDigest(ResultSet rows, int first) throws SQLException {
    this.rows = rows;
    this.first = first;
    this.sha = ContentHash.sha256();
    ResultSetMetaData columns = rows.getMetaData();
    for (int at = first; at <= columns.getColumnCount(); at++) {
      names.add(columns.getColumnName(at).getBytes(StandardCharsets.UTF_8));
    }
  }

  /**
   * The digest of the current row after another one.
   *
   * @param before the other row's digest, or the table's name
   */
  String after(String before) throws SQLException {
    part('<', before.getBytes(StandardCharsets.UTF_8));
    for (int at = 0; at < names.size(); at++) {
      Object value = rows.getObject(first + at);
      if (value != null) {
        part('=', names.get(at));
        value(first + at, value);
      }
    }
    return HexFormat.of().formatHex(sha.digest());
  }

  /** Texts count by their bytes as they lie in the file, whether or not they are UTF-8. */
  private void value(int column, Object value) throws SQLException {
    if (value instanceof Integer || value instanceof Long) {
      part('i', value.toString().getBytes(StandardCharsets.US_ASCII));
    } else if (value instanceof Double number) {
      part('r', Long.toHexString(Double.doubleToLongBits(number)).getBytes(StandardCharsets.UTF_8));
    } else {
      byte[] bytes = rows.getBytes(column);
      part(value instanceof String ? 't' : 'b', bytes == null ? new byte[0] : bytes);
    }
  }

  /** Length first, so that no two rows give the same bytes. */
  private void part(char kind, byte[] bytes) {
    sha.update((byte) kind);
    for (int shift = 24; shift >= 0; shift -= 8) {
      sha.update((byte) (bytes.length >> shift));
    }
    sha.update(bytes);
  }
}
