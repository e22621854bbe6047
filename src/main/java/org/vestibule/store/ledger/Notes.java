package org.vestibule.store.ledger;

import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Uids;
import org.vestibule.encode.NoteIdentity;
import org.vestibule.encode.RejectionNote;

/** The rejection notes that are on the disk, one for each correction at most. */
public final class Notes {

  private final Database database;
  private final Uids uids;

  Notes(Database database, Uids uids) {
    this.database = database;
    this.uids = uids;
  }

  /**
   * The identity of a note about this revision's objects, always the same for the same words.
   *
   * @param frame the rejected frame
   * @param reason a word of the reasons' table
   * @param at when it was decided
   */
  public NoteIdentity identity(Intent frame, String reason, Instant at) {
    return new NoteIdentity(
        uids.of("note", frame.sopUid(), reason, at.toString(), RejectionNote.VERSION),
        uids.of("note series", frame.seriesUid()));
  }

  /** Says that a correction's note is on the disk. */
  public void keep(
      ContentHash hash, int revision, String sopUid, String reason, ContentHash file, long size) {
    database.update(
        "INSERT INTO note (practice, sop_uid, hash, revision, reason, file_hash, size, at)"
            + " VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
        database.practice(),
        sopUid,
        hash,
        revision,
        reason,
        file,
        size,
        database.now());
  }

  /** The note about a revision that no longer counts. */
  public Optional<NoteRow> of(ContentHash hash, int revision) {
    return database.one(
        "SELECT * FROM note WHERE practice = ? AND hash = ? AND revision = ?",
        Notes::read,
        database.practice(),
        hash,
        revision);
  }

  /** The note that says that this object, frame or crop, no longer counts. */
  public Optional<NoteRow> about(String objectUid) {
    return database.one(
        "SELECT n.* FROM note n JOIN intent i ON i.practice = n.practice AND i.hash = n.hash"
            + " AND i.revision = n.revision WHERE n.practice = ? AND i.sop_uid = ?",
        Notes::read,
        database.practice(),
        objectUid);
  }

  public Optional<NoteRow> find(String sopUid) {
    return database.one(
        "SELECT * FROM note WHERE practice = ? AND sop_uid = ?",
        Notes::read,
        database.practice(),
        sopUid);
  }

  /** Every note, the first one first. */
  public List<NoteRow> all() {
    return database.list(
        "SELECT * FROM note WHERE practice = ? ORDER BY at, sop_uid",
        Notes::read,
        database.practice());
  }

  /** The corrections that have no note yet, the first one first. */
  public List<CorrectionRow> missing() {
    return database.list(
        "SELECT c.* FROM correction c WHERE c.practice = ? AND NOT EXISTS (SELECT 1 FROM note n"
            + " WHERE n.practice = c.practice AND n.hash = c.hash AND n.revision = c.revision)"
            + " ORDER BY c.at, c.hash, c.revision",
        Corrections::read,
        database.practice());
  }

  private static NoteRow read(Row row) throws SQLException {
    return new NoteRow(
        row.text("sop_uid"),
        row.hash("hash"),
        row.number("revision"),
        row.text("reason"),
        row.hash("file_hash"),
        row.large("size"),
        row.time("at"));
  }
}
