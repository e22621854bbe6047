package org.vestibule.store.ledger;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;

/**
 * Lets the deliveries to a destination follow what happened here, in the order in which it
 * happened: a kept object is to be sent; a revision that no longer counts is taken back by a note
 * where the destination may have it, and is not sent where it has not.
 */
public final class Outgoing {

  private final Database database;

  Outgoing(Database database) {
    this.database = database;
  }

  private record Happening(
      long number, boolean kept, ContentHash hash, int revision, @Nullable String sopUid) {}

  /**
   * Follows some of what is new, in one transaction.
   *
   * @param most how many happenings at most
   * @return how many were followed; fewer than the most if nothing more is new
   */
  public int follow(String destination, int most) {
    return database.together(
        () -> {
          List<Happening> happenings = after(reached(destination), most);
          for (Happening happening : happenings) {
            takeBack(destination, happening.hash());
            if (happening.kept() && happening.sopUid() != null) {
              enrol(destination, happening, happening.sopUid());
            }
          }
          if (!happenings.isEmpty()) {
            reach(destination, happenings.get(happenings.size() - 1).number());
          }
          return happenings.size();
        });
  }

  private long reached(String destination) {
    return database
        .one(
            "SELECT number FROM delivery_reached WHERE practice = ? AND destination = ?",
            row -> row.large("number"),
            database.practice(),
            destination)
        .orElse(0L);
  }

  private void reach(String destination, long number) {
    database.update(
        "INSERT INTO delivery_reached (practice, destination, number) VALUES (?, ?, ?)"
            + " ON CONFLICT (practice, destination) DO UPDATE SET number = excluded.number",
        database.practice(),
        destination,
        number);
  }

  private List<Happening> after(long number, int most) {
    return database.list(
        "SELECT * FROM outgoing WHERE practice = ? AND number > ? ORDER BY number LIMIT ?",
        row ->
            new Happening(
                row.large("number"),
                row.text("kind").equals("KEPT"),
                row.hash("hash"),
                row.number("revision"),
                row.textOrNull("sop_uid")),
        database.practice(),
        number,
        most);
  }

  /** An object that no longer counts is not begun; one that does goes behind the last note. */
  private void enrol(String destination, Happening kept, String sopUid) {
    database.update(
        "INSERT OR IGNORE INTO delivery (practice, destination, kind, hash, revision, sop_uid,"
            + " study_uid, series_uid, behind, state, perhaps_there, taken_back, attempts, asks,"
            + " due_at, words, changed_at)"
            + " SELECT i.practice, ?, 'PHOTO', i.hash, i.revision, i.sop_uid, i.study_uid,"
            + " i.series_uid, b.note, 'WAITING', 0, 0, 0, 0,"
            + " CASE WHEN b.note IS NULL THEN ? END, '', ? FROM intent i,"
            + " (SELECT max(number) AS note FROM delivery WHERE practice = ? AND destination = ?"
            + " AND hash = ? AND kind = 'NOTE' AND state <> 'CONFIRMED') b"
            + " WHERE i.practice = ? AND i.sop_uid = ? AND NOT EXISTS (SELECT 1 FROM correction c"
            + " WHERE c.practice = i.practice AND c.hash = i.hash AND c.revision = i.revision)",
        destination,
        DeliveryRows.second(database.now()),
        database.now(),
        database.practice(),
        destination,
        kept.hash(),
        database.practice(),
        sopUid);
  }

  /** What the destination may have of revisions that no longer count gets a note, once. */
  private void takeBack(String destination, ContentHash hash) {
    List<DeliveryRow> old =
        database.list(
            "SELECT d.* FROM delivery d JOIN correction c ON c.practice = d.practice AND c.hash ="
                + " d.hash AND c.revision = d.revision WHERE d.practice = ? AND d.destination = ?"
                + " AND d.hash = ? AND d.kind = 'PHOTO' AND d.taken_back = 0 AND d.state <>"
                + " 'WITHDRAWN' ORDER BY d.revision, d.number",
            DeliveryRows::read,
            database.practice(),
            destination,
            hash);
    for (DeliveryRow row : old) {
      if (row.perhapsThere()) {
        note(row);
        set(row, row.state(), 1, "taken back here; a note tells the archive");
      } else {
        set(row, DeliveryState.WITHDRAWN, 0, "taken back here before it was sent");
      }
    }
  }

  private void note(DeliveryRow old) {
    database.update(
        "INSERT OR IGNORE INTO delivery (practice, destination, kind, hash, revision, study_uid,"
            + " behind, state, perhaps_there, taken_back, attempts, asks, due_at, words,"
            + " changed_at) VALUES (?, ?, 'NOTE', ?, ?, ?, NULL, 'WAITING', 0, 0, 0, 0, ?, '', ?)",
        database.practice(),
        old.destination(),
        old.hash(),
        old.revision(),
        old.studyUid(),
        DeliveryRows.second(database.now()),
        database.now());
  }

  private void set(DeliveryRow row, DeliveryState state, int takenBack, String words) {
    boolean stillAsked = state == DeliveryState.SENT;
    database.update(
        "UPDATE delivery SET state = ?, taken_back = ?, words = ?, changed_at = ?,"
            + (stillAsked ? " due_at = due_at" : " due_at = NULL")
            + " WHERE practice = ? AND number = ?",
        state,
        takenBack,
        words,
        database.now(),
        database.practice(),
        row.number());
    new DeliveryEvents(database)
        .add(row.number(), state, row.attempts(), null, words, null, "vestibule");
  }
}
