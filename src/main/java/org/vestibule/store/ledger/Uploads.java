package org.vestibule.store.ledger;

import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.vestibule.base.ContentHash;

/** Files that phones send. */
public final class Uploads {

  private static final String ALL =
      "SELECT b.*, u.hash AS hash, u.arrived_as AS arrived_as, u.confirmed AS confirmed,"
          + " u.at AS received_at FROM upload_begun b LEFT JOIN upload u"
          + " ON u.practice = b.practice AND u.id = b.id WHERE b.practice = ?";

  private final Database database;

  Uploads(Database database) {
    this.database = database;
  }

  /** Begins one. */
  public UploadRow begin(String id, int link, String name, long sizeBytes, String view) {
    database.update(
        "INSERT INTO upload_begun (practice, id, link, name, size, view, at)"
            + " VALUES (?, ?, ?, ?, ?, ?, ?)",
        database.practice(),
        id,
        link,
        name,
        sizeBytes,
        view,
        database.now());
    return find(id).orElseThrow();
  }

  /** Says that one is here. */
  public UploadRow received(String id, ContentHash hash, String arrivedAs, boolean confirmed) {
    database.update(
        "INSERT INTO upload (practice, id, hash, arrived_as, confirmed, at)"
            + " VALUES (?, ?, ?, ?, ?, ?)",
        database.practice(),
        id,
        hash,
        arrivedAs,
        confirmed ? 1 : 0,
        database.now());
    return find(id).orElseThrow();
  }

  public Optional<UploadRow> find(String id) {
    return database.one(ALL + " AND b.id = ?", Uploads::read, database.practice(), id);
  }

  /** Those of one page, in the order in which they were begun. */
  public List<UploadRow> of(int link) {
    return database.list(
        ALL + " AND b.link = ? ORDER BY b.at, b.rowid", Uploads::read, database.practice(), link);
  }

  /** Those that brought this photograph, the first one first. */
  public List<UploadRow> of(ContentHash hash) {
    return database.list(
        ALL + " AND u.hash = ? ORDER BY u.number", Uploads::read, database.practice(), hash);
  }

  /** Those that were received for a visit, the first one first. */
  public List<UploadRow> receivedFor(String visit) {
    return database.list(
        ALL
            + " AND u.number IS NOT NULL AND b.link IN (SELECT number FROM phone_link"
            + " WHERE practice = b.practice AND visit = ?) ORDER BY u.number",
        Uploads::read,
        database.practice(),
        visit);
  }

  /** True if a file was received under this name. */
  public boolean isTaken(String arrivedAs) {
    return database
        .one(
            "SELECT 1 AS taken FROM upload WHERE practice = ? AND arrived_as = ?",
            row -> row.number("taken"),
            database.practice(),
            arrivedAs)
        .isPresent();
  }

  private static UploadRow read(Row row) throws SQLException {
    boolean here = row.textOrNull("hash") != null;
    return new UploadRow(
        row.text("id"),
        row.number("link"),
        row.text("name"),
        row.large("size"),
        row.text("view"),
        row.time("at"),
        here
            ? new UploadRow.Received(
                row.hash("hash"),
                row.text("arrived_as"),
                row.number("confirmed") == 1,
                row.time("received_at"))
            : null);
  }
}
