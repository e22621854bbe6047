package org.vestibule.store.ledger;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.sqlite.SQLiteConfig;
import org.vestibule.base.ContentHash;

/** Reads a copy of a ledger without changing it or the folder it lies in. */
public final class LedgerCopy {

  /**
   * An object as the copy knows it.
   *
   * @param fileHash over the whole file
   */
  public record Kept(String sopUid, ContentHash fileHash, long sizeBytes) {}

  private LedgerCopy() {}

  /**
   * Every object that was kept when the copy was made, rejected and replaced ones and notes too.
   */
  public static List<Kept> kept(Path file) {
    String notes =
        list(file, "SELECT 1 FROM sqlite_master WHERE name = 'note'", row -> 1).isEmpty()
            ? ""
            : " UNION ALL SELECT sop_uid, file_hash, size, at FROM note";
    return list(
        file,
        "SELECT sop_uid, file_hash, size, at FROM kept" + notes + " ORDER BY at, sop_uid",
        row ->
            new Kept(
                row.getString("sop_uid"),
                new ContentHash(row.getString("file_hash")),
                row.getLong("size")));
  }

  /** What is wrong with the copy; empty if every row is as it was written. */
  public static List<String> faults(Path file) {
    try (Connection connection = open(file)) {
      List<String> faults = new ArrayList<>(FileCheck.faults(connection));
      if (faults.isEmpty()) {
        faults.addAll(SealCheck.broken(connection));
      }
      return faults;
    } catch (SQLException e) {
      throw Database.failed(e);
    }
  }

  private static Connection open(Path file) throws SQLException {
    SQLiteConfig config = new SQLiteConfig();
    config.setReadOnly(true);
    return config.createConnection("jdbc:sqlite:" + file.toAbsolutePath());
  }

  @FunctionalInterface
  private interface Reader<T> {
    T read(ResultSet row) throws SQLException;
  }

  private static <T> List<T> list(Path file, String sql, Reader<T> reader) {
    try (Connection connection = open(file);
        PreparedStatement statement = connection.prepareStatement(sql);
        ResultSet result = statement.executeQuery()) {
      List<T> rows = new ArrayList<>();
      while (result.next()) {
        rows.add(reader.read(result));
      }
      return rows;
    } catch (SQLException e) {
      throw Database.failed(e);
    }
  }
}
