package org.vestibule.store.ledger;

import java.sql.SQLException;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.vestibule.base.ContentHash;

/** Where each photograph stands. */
public final class Photos {

  private final Database database;

  Photos(Database database) {
    this.database = database;
  }

  public Optional<PhotoRow> find(ContentHash hash) {
    return database.one(
        "SELECT * FROM photo WHERE practice = ? AND hash = ?",
        Photos::read,
        database.practice(),
        hash);
  }

  /** The photographs in this state, in the order in which they arrived. */
  public List<PhotoRow> in(PhotoState state) {
    return database.list(
        "SELECT * FROM photo WHERE practice = ? AND state = ? ORDER BY first_seen_at, hash",
        Photos::read,
        database.practice(),
        state);
  }

  /** How many photographs are in each state. */
  public Map<PhotoState, Integer> counts() {
    Map<PhotoState, Integer> counts = new EnumMap<>(PhotoState.class);
    for (PhotoState state : PhotoState.values()) {
      counts.put(state, 0);
    }
    database
        .list(
            "SELECT state, count(*) AS n FROM photo WHERE practice = ? GROUP BY state",
            row -> Map.entry(PhotoState.valueOf(row.text("state")), row.number("n")),
            database.practice())
        .forEach(entry -> counts.put(entry.getKey(), entry.getValue()));
    return counts;
  }

  /**
   * The photographs whose hash begins so, at most ten.
   *
   * @param prefix hexadecimal digits in lower case
   */
  public List<ContentHash> startingWith(String prefix) {
    return database.list(
        "SELECT hash FROM photo WHERE practice = ? AND hash >= ? AND hash < ?"
            + " ORDER BY hash LIMIT 10",
        row -> row.hash("hash"),
        database.practice(),
        prefix,
        prefix + "g");
  }

  PhotoRow require(ContentHash hash) {
    return find(hash)
        .orElseThrow(
            () -> new LedgerException("photograph " + hash.brief() + " never arrived here"));
  }

  void move(ContentHash hash, PhotoState state) {
    require(hash);
    database.update(
        "UPDATE photo SET state = ? WHERE practice = ? AND hash = ?",
        state,
        database.practice(),
        hash);
  }

  private static PhotoRow read(Row row) throws SQLException {
    return new PhotoRow(
        row.hash("hash"),
        row.large("size"),
        row.time("first_seen_at"),
        PhotoState.valueOf(row.text("state")));
  }
}
