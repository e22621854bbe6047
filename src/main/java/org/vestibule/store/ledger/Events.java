package org.vestibule.store.ledger;

import java.sql.SQLException;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;

/** The audit trail: who did what to which photograph, and when. */
public final class Events {

  private final Database database;

  Events(Database database) {
    this.database = database;
  }

  /**
   * Records an event.
   *
   * @param what a few words, such as {@code exported}
   * @param details JSON text, or empty
   */
  public void add(String who, String what, @Nullable ContentHash hash, String details) {
    database.update(
        "INSERT INTO event (practice, who, what, hash, details, at) VALUES (?, ?, ?, ?, ?, ?)",
        database.practice(),
        who,
        what,
        hash,
        details,
        database.now());
  }

  /** What happened to a photograph, the first thing first. */
  public List<EventRow> of(ContentHash hash) {
    return database.list(
        "SELECT * FROM event WHERE practice = ? AND hash = ? ORDER BY number",
        Events::read,
        database.practice(),
        hash);
  }

  /** What happened last, at most so many events, the last one first. */
  public List<EventRow> latest(int most) {
    return database.list(
        "SELECT * FROM event WHERE practice = ? ORDER BY number DESC LIMIT ?",
        Events::read,
        database.practice(),
        most);
  }

  private static EventRow read(Row row) throws SQLException {
    String hash = row.textOrNull("hash");
    return new EventRow(
        row.text("who"),
        row.text("what"),
        hash == null ? null : new ContentHash(hash),
        row.text("details"),
        row.time("at"));
  }
}
