package org.vestibule.store.ledger;

import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.vestibule.base.ContentHash;

/** The files that arrived and what was read from them. */
public final class Arrivals {

  private final Database database;

  Arrivals(Database database) {
    this.database = database;
  }

  /**
   * Records a file. The same bytes under another name are the same photograph, known by both names.
   *
   * @return true if the photograph was not known before
   */
  public boolean seen(SeenFile file) {
    return database.together(
        () -> {
          database.update(
              "INSERT OR IGNORE INTO arrival (practice, hash, name, size, modified, seen_at)"
                  + " VALUES (?, ?, ?, ?, ?, ?)",
              database.practice(),
              file.hash(),
              file.name(),
              file.sizeBytes(),
              file.modified(),
              database.now());
          int added =
              database.update(
                  "INSERT OR IGNORE INTO photo (practice, hash, size, first_seen_at, state)"
                      + " VALUES (?, ?, ?, ?, ?)",
                  database.practice(),
                  file.hash(),
                  file.sizeBytes(),
                  database.now(),
                  PhotoState.SEEN);
          return added == 1;
        });
  }

  /** Every name under which the photograph arrived, the first one first. */
  public List<SeenFile> of(ContentHash hash) {
    return database.list(
        "SELECT * FROM arrival WHERE practice = ? AND hash = ? ORDER BY seen_at, name",
        Arrivals::read,
        database.practice(),
        hash);
  }

  /** The photographs that arrived under this name, the newest first. */
  public List<SeenFile> named(String name) {
    return database.list(
        "SELECT * FROM arrival WHERE practice = ? AND name = ? ORDER BY seen_at DESC, hash",
        Arrivals::read,
        database.practice(),
        name);
  }

  private static SeenFile read(Row row) throws SQLException {
    return new SeenFile(
        row.hash("hash"), row.text("name"), row.large("size"), row.time("modified"));
  }

  /**
   * Records what was read from a photograph; what is recorded last counts, and nothing is added if
   * it is the same again.
   *
   * @param kind what sort of facts, such as {@code camera}
   */
  public void facts(ContentHash hash, String kind, String json) {
    database.together(
        () -> {
          if (facts(hash, kind).filter(json::equals).isPresent()) {
            return 0;
          }
          return database.update(
              "INSERT INTO facts (practice, hash, kind, json, recorded_at) VALUES (?, ?, ?, ?, ?)",
              database.practice(),
              hash,
              kind,
              json,
              database.now());
        });
  }

  /**
   * Marks a photograph, so that it is found again with all others that bear the mark.
   *
   * @param kind what the mark says, such as {@code shot}
   */
  public void mark(ContentHash hash, String kind, String value) {
    database.update(
        "INSERT OR IGNORE INTO photo_mark (practice, kind, value, hash) VALUES (?, ?, ?, ?)",
        database.practice(),
        kind,
        value,
        hash);
  }

  /** The photographs that bear this mark, the one marked first the first. */
  public List<ContentHash> marked(String kind, String value) {
    return database.list(
        "SELECT hash FROM photo_mark WHERE practice = ? AND kind = ? AND value = ? ORDER BY number",
        row -> row.hash("hash"),
        database.practice(),
        kind,
        value);
  }

  /** For each value of a mark, when a photograph that bears it was first seen last. */
  public Map<String, Instant> lastSeen(String kind) {
    Map<String, Instant> seen = new TreeMap<>();
    database
        .list(
            "SELECT m.value AS value, MAX(p.first_seen_at) AS at FROM photo_mark m JOIN photo p"
                + " ON p.practice = m.practice AND p.hash = m.hash"
                + " WHERE m.practice = ? AND m.kind = ? GROUP BY m.value",
            row -> Map.entry(row.text("value"), row.time("at")),
            database.practice(),
            kind)
        .forEach(entry -> seen.put(entry.getKey(), entry.getValue()));
    return seen;
  }

  /** The facts of this kind that were recorded last. */
  public Optional<String> facts(ContentHash hash, String kind) {
    return database.one(
        "SELECT json FROM facts WHERE practice = ? AND hash = ? AND kind = ?"
            + " ORDER BY number DESC LIMIT 1",
        row -> row.text("json"),
        database.practice(),
        hash,
        kind);
  }
}
