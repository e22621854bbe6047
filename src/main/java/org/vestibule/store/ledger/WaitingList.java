package org.vestibule.store.ledger;

import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;

/** What waits for a person and why; what it said earlier stays in the history. */
public final class WaitingList {

  private final Database database;
  private final Photos photos;
  private final Changes changes;
  private final Events events;

  WaitingList(Database database, Photos photos, Changes changes, Events events) {
    this.database = database;
    this.photos = photos;
    this.changes = changes;
    this.events = events;
  }

  /**
   * Lets a photograph wait, or changes the reasons.
   *
   * @param indexRecord how the index describes it
   * @return false if it waits already for just that
   * @throws LedgerException if it is filed or being filed
   */
  public boolean put(ContentHash hash, String reasons, String proposal, String indexRecord) {
    return database.together(
        () -> {
          PhotoState state = photos.require(hash).state();
          if (state == PhotoState.KEPT || state == PhotoState.INTENDED) {
            throw new LedgerException(
                "photograph " + hash.brief() + " is filed or being filed, so it can't wait");
          }
          changes.put(hash.hex(), indexRecord);
          Optional<WaitingRow> before = find(hash);
          if (before.isPresent()
              && before.get().reasons().equals(reasons)
              && before.get().proposal().equals(proposal)) {
            return false;
          }
          database.update(
              "INSERT INTO waiting (practice, hash, reasons, proposal, since, changed_at)"
                  + " VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT (practice, hash) DO UPDATE SET"
                  + " reasons = excluded.reasons, proposal = excluded.proposal, changed_at ="
                  + " excluded.changed_at",
              database.practice(),
              hash,
              reasons,
              proposal,
              database.now(),
              database.now());
          history(hash, reasons, proposal);
          photos.move(hash, PhotoState.WAITING);
          return true;
        });
  }

  /**
   * Ends the waiting of a photograph that is not to be filed at all, because a person said so. It
   * leaves search too.
   *
   * @return false if it does not wait
   */
  public boolean dismiss(ContentHash hash, String who, String why) {
    return database.together(
        () -> {
          if (find(hash).isEmpty()) {
            return false;
          }
          clear(hash);
          photos.move(hash, PhotoState.REJECTED);
          changes.remove(hash.hex());
          events.add(who, "dismissed", hash, why);
          return true;
        });
  }

  /** Ends the waiting of a photograph that is being filed. */
  void clear(ContentHash hash) {
    int cleared =
        database.update(
            "DELETE FROM waiting WHERE practice = ? AND hash = ?", database.practice(), hash);
    if (cleared > 0) {
      history(hash, null, null);
    }
  }

  private void history(ContentHash hash, @Nullable String reasons, @Nullable String proposal) {
    database.update(
        "INSERT INTO waiting_history (practice, hash, reasons, proposal, at)"
            + " VALUES (?, ?, ?, ?, ?)",
        database.practice(),
        hash,
        reasons,
        proposal,
        database.now());
  }

  public Optional<WaitingRow> find(ContentHash hash) {
    return database.one(
        "SELECT * FROM waiting WHERE practice = ? AND hash = ?",
        WaitingList::read,
        database.practice(),
        hash);
  }

  /** Everything that waits, the longest waiting first. */
  public List<WaitingRow> all() {
    return database.list(
        "SELECT * FROM waiting WHERE practice = ? ORDER BY since, hash",
        WaitingList::read,
        database.practice());
  }

  private static WaitingRow read(Row row) throws SQLException {
    return new WaitingRow(
        row.hash("hash"), row.text("reasons"), row.text("proposal"), row.time("since"));
  }
}
