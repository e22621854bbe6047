package org.vestibule.store.ledger;

import java.sql.SQLException;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;

/** Revisions that no longer count, with who and why; their objects stay. */
public final class Corrections {

  private final Database database;
  private final Photos photos;
  private final Intents intents;
  private final Changes changes;
  private final Events events;

  Corrections(Database database, Photos photos, Intents intents, Changes changes, Events events) {
    this.database = database;
    this.photos = photos;
    this.intents = intents;
    this.changes = changes;
    this.events = events;
  }

  /**
   * Takes a photograph out of the record and out of search that is filed, or was to be filed by a
   * run that did not finish.
   *
   * @param reason of what kind the reason is, a word of the reasons' table
   * @return false if nothing of it counts any more, or it waits
   */
  public boolean reject(ContentHash hash, String who, String why, String reason) {
    return database.together(
        () -> {
          List<Intent> current = intents.current(hash);
          PhotoState state = photos.require(hash).state();
          boolean begun = state == PhotoState.INTENDED || state == PhotoState.SEEN;
          if (current.isEmpty() && !begun) {
            return false;
          }
          intents.abandon(hash, who, why);
          if (current.isEmpty()) {
            events.add(who, "dismissed", hash, why);
          } else {
            insert(current.get(0), "REJECTED", null, who, why, reason);
          }
          photos.move(hash, PhotoState.REJECTED);
          changes.remove(hash.hex());
          return true;
        });
  }

  void replaced(Intent old, int newRevision, DecisionRow decision) {
    insert(old, "REPLACED", newRevision, decision.decidedBy(), decision.why(), decision.reason());
  }

  private void insert(
      Intent old,
      String kind,
      @Nullable Integer newRevision,
      String who,
      String why,
      @Nullable String reason) {
    database.update(
        "INSERT INTO correction (practice, hash, revision, kind, new_revision, who, why, reason,"
            + " at) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
        database.practice(),
        old.hash(),
        old.revision(),
        kind,
        newRevision,
        who,
        why,
        reason,
        database.now());
  }

  /** All corrections of a photograph, the first one first. */
  public List<CorrectionRow> of(ContentHash hash) {
    return database.list(
        "SELECT * FROM correction WHERE practice = ? AND hash = ? ORDER BY revision",
        Corrections::read,
        database.practice(),
        hash);
  }

  static CorrectionRow read(Row row) throws SQLException {
    return new CorrectionRow(
        row.hash("hash"),
        row.number("revision"),
        row.numberOrNull("new_revision"),
        row.text("who"),
        row.text("why"),
        row.textOrNull("reason"),
        row.time("at"));
  }
}
