package org.vestibule.store.ledger;

import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;

/** Who decided what about a photograph; only ever added to. */
public final class Decisions {

  private static final int ID_DIGITS = 32;

  private final Database database;
  private final Photos photos;

  Decisions(Database database, Photos photos) {
    this.database = database;
    this.photos = photos;
  }

  /**
   * Records a decision.
   *
   * @param why the reason if it corrects an earlier one, else empty
   */
  public DecisionRow add(
      ContentHash hash, String json, String decidedBy, String source, String why) {
    return add(hash, json, decidedBy, source, why, null);
  }

  /**
   * Records a decision that corrects an earlier one.
   *
   * @param reason of what kind the reason is, a word of the reasons' table
   */
  public DecisionRow add(
      ContentHash hash,
      String json,
      String decidedBy,
      String source,
      String why,
      @Nullable String reason) {
    return database.together(
        () -> {
          photos.require(hash);
          Instant at = database.now();
          DecisionRow decision =
              new DecisionRow(
                  id(hash, json, decidedBy, at), hash, json, decidedBy, source, why, reason, at);
          database.update(
              "INSERT INTO decision (practice, id, hash, json, decided_by, source, why,"
                  + " reason, decided_at) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
              database.practice(),
              decision.id(),
              hash,
              json,
              decidedBy,
              source,
              why,
              reason,
              at);
          return decision;
        });
  }

  /**
   * Made from what was decided, so that a ledger restored from a backup, which counts from an older
   * number, can't give one id to two decisions.
   */
  private String id(ContentHash hash, String json, String decidedBy, Instant at) {
    String before =
        database
            .one(
                "SELECT id FROM decision WHERE practice = ? ORDER BY number DESC LIMIT 1",
                row -> row.text("id"),
                database.practice())
            .orElse("");
    String parts = String.join("\0", before, hash.hex(), json, decidedBy, at.toString());
    return ContentHash.of(parts.getBytes(StandardCharsets.UTF_8)).hex().substring(0, ID_DIGITS);
  }

  public Optional<DecisionRow> find(String id) {
    return database.one(
        "SELECT * FROM decision WHERE practice = ? AND id = ?",
        Decisions::read,
        database.practice(),
        id);
  }

  /** All decisions about a photograph, the first one first. */
  public List<DecisionRow> of(ContentHash hash) {
    return database.list(
        "SELECT * FROM decision WHERE practice = ? AND hash = ? ORDER BY number",
        Decisions::read,
        database.practice(),
        hash);
  }

  private static DecisionRow read(Row row) throws SQLException {
    return new DecisionRow(
        row.text("id"),
        row.hash("hash"),
        row.text("json"),
        row.text("decided_by"),
        row.text("source"),
        row.text("why"),
        row.textOrNull("reason"),
        row.time("decided_at"));
  }
}
