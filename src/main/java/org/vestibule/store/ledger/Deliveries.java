package org.vestibule.store.ledger;

import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.vestibule.base.ContentHash;

/** What is on its way to which destination: what is due, and what became of it. */
public final class Deliveries {

  private final Database database;
  private final DeliveryEvents events;
  private final Outgoing outgoing;
  private final Commitments commitments;

  Deliveries(Database database) {
    this.database = database;
    this.events = new DeliveryEvents(database);
    this.outgoing = new Outgoing(database);
    this.commitments = new Commitments(database);
  }

  /** How deliveries follow what happens here. */
  public Outgoing outgoing() {
    return outgoing;
  }

  /** What archives were asked to commit themselves to. */
  public Commitments commitments() {
    return commitments;
  }

  /**
   * What is in this state and due, the longest due first.
   *
   * @param most how many at most
   */
  public List<DeliveryRow> due(String destination, DeliveryState state, Instant now, int most) {
    return database.list(
        "SELECT * FROM delivery WHERE practice = ? AND destination = ? AND state = ?"
            + " AND due_at IS NOT NULL AND due_at <= ? ORDER BY due_at, number LIMIT ?",
        DeliveryRows::read,
        database.practice(),
        destination,
        state,
        DeliveryRows.second(now),
        most);
  }

  /**
   * Says that this is sent now, so that whatever happens then, it is known that the destination may
   * have it.
   *
   * @return false if it no longer counts and must not be sent
   */
  public boolean begin(DeliveryRow row) {
    int begun =
        database.update(
            "UPDATE delivery SET perhaps_there = 1 WHERE practice = ? AND number = ? AND taken_back = 0"
                + " AND state IN ('WAITING', 'FAILED') AND due_at IS NOT NULL AND (kind = 'NOTE' OR NOT"
                + " EXISTS (SELECT 1 FROM correction c WHERE c.practice = delivery.practice AND c.hash ="
                + " delivery.hash AND c.revision = delivery.revision))",
            database.practice(),
            row.number());
    return begun == 1;
  }

  /**
   * Records the answers to attempts after which the destination certainly has not got the objects
   * from these attempts; what it may have from earlier ones stays so. Nothing else says again that
   * it has not got an object.
   *
   * @param rows as they were read before their attempts began
   */
  public void notArrived(List<DeliveryRow> rows, List<DeliveryChange> answers, String who) {
    database.together(
        () -> {
          rows.stream().filter(row -> !row.perhapsThere()).forEach(this::notArrived);
          record(answers, who);
          return rows;
        });
  }

  private void notArrived(DeliveryRow row) {
    database.update(
        "UPDATE delivery SET perhaps_there = 0 WHERE practice = ? AND number = ? AND attempts = ?"
            + " AND asks = ? AND state IN ('WAITING', 'FAILED')",
        database.practice(),
        row.number(),
        row.attempts(),
        row.asks());
  }

  /** Lets nothing at this destination be due before this moment. */
  public void putOff(String destination, Instant until) {
    Instant second = DeliveryRows.second(until.plusMillis(999)); // not a part of a second early
    database.update(
        "UPDATE delivery SET due_at = ? WHERE practice = ? AND destination = ? AND due_at < ?",
        second,
        database.practice(),
        destination,
        second);
  }

  /** When the next thing is due; empty if nothing is. */
  public Optional<Instant> nextDue(String destination) {
    return List.of(DeliveryState.WAITING, DeliveryState.SENT, DeliveryState.FAILED).stream()
        .flatMap(state -> firstDue(destination, state).stream())
        .min(Instant::compareTo);
  }

  private Optional<Instant> firstDue(String destination, DeliveryState state) {
    return database.one(
        "SELECT due_at FROM delivery WHERE practice = ? AND destination = ? AND state = ?"
            + " AND due_at IS NOT NULL ORDER BY due_at, number LIMIT 1",
        row -> row.time("due_at"),
        database.practice(),
        destination,
        state);
  }

  /** Notes what an object is, once its file was looked into. */
  public void identify(
      long number, String sopUid, String sopClass, String studyUid, String seriesUid) {
    database.update(
        "UPDATE delivery SET sop_uid = ?, sop_class = ?, study_uid = ?, series_uid = ?"
            + " WHERE practice = ? AND number = ?",
        sopUid,
        sopClass,
        studyUid,
        seriesUid,
        database.practice(),
        number);
  }

  /**
   * Records what became of deliveries, all in one transaction. What stands behind a note that is
   * confirmed becomes due.
   */
  public void record(List<DeliveryChange> changes, String who) {
    if (!changes.isEmpty()) {
      database.together(
          () -> {
            changes.forEach(change -> apply(change, who));
            return changes;
          });
    }
  }

  /** What is confirmed stays so, and what was taken back meanwhile is not sent again. */
  private void apply(DeliveryChange change, String who) {
    int changed =
        database.update(
            "UPDATE delivery SET state = ?, attempts = ?, asks = ?,"
                + " perhaps_there = max(perhaps_there, ?), due_at ="
                + " CASE WHEN taken_back = 1 AND ? <> 'SENT' THEN NULL ELSE ? END, status = ?,"
                + " words = ?, changed_at = ? WHERE practice = ? AND number = ?"
                + " AND state <> 'CONFIRMED'",
            change.state(),
            change.attempts(),
            change.asks(),
            change.perhapsThere() ? 1 : 0,
            change.state(),
            DeliveryRows.second(change.dueAt()),
            change.status(),
            change.words(),
            database.now(),
            database.practice(),
            change.delivery());
    if (changed == 0) {
      return;
    }
    events.add(
        change.delivery(),
        change.state(),
        change.attempts(),
        change.status(),
        change.words(),
        change.transactionUid(),
        who);
    change.coerced().forEach((keyword, values) -> coerced(change.delivery(), keyword, values));
    if (change.state() == DeliveryState.CONFIRMED) {
      database.update(
          "UPDATE delivery SET due_at = ?, behind = NULL WHERE practice = ? AND behind = ?"
              + " AND state = 'WAITING'",
          DeliveryRows.second(database.now()),
          database.practice(),
          change.delivery());
    }
  }

  private void coerced(long delivery, String keyword, DeliveryChange.Changed values) {
    database.update(
        "INSERT OR IGNORE INTO delivery_coercion (practice, delivery, keyword, ours, theirs, at)"
            + " VALUES (?, ?, ?, ?, ?, ?)",
        database.practice(),
        delivery,
        keyword,
        values.ours(),
        values.theirs(),
        database.now());
  }

  /** What the destination changed in an object: keyword to our value and its value. */
  public Map<String, DeliveryChange.Changed> coerced(long delivery) {
    Map<String, DeliveryChange.Changed> coerced = new TreeMap<>();
    database
        .list(
            "SELECT * FROM delivery_coercion WHERE delivery = ? ORDER BY number",
            row ->
                Map.entry(
                    row.text("keyword"),
                    new DeliveryChange.Changed(row.text("ours"), row.text("theirs"))),
            delivery)
        .forEach(entry -> coerced.put(entry.getKey(), entry.getValue()));
    return coerced;
  }

  public Optional<DeliveryRow> find(long number) {
    return database.one(
        "SELECT * FROM delivery WHERE practice = ? AND number = ?",
        DeliveryRows::read,
        database.practice(),
        number);
  }

  /** Every delivery of what was made from a photograph. */
  public List<DeliveryRow> of(ContentHash photo) {
    return database.list(
        "SELECT * FROM delivery WHERE practice = ? AND hash = ? ORDER BY destination, number",
        DeliveryRows::read,
        database.practice(),
        photo);
  }

  /** What happened to one delivery, the first thing first. */
  public List<DeliveryEventRow> events(long number) {
    return events.of(number);
  }

  /** How many deliveries to a destination are in each state. */
  public Map<DeliveryState, Integer> counts(String destination) {
    Map<DeliveryState, Integer> counts = new EnumMap<>(DeliveryState.class);
    database
        .list(
            "SELECT state, count(*) AS n FROM delivery WHERE practice = ? AND destination = ?"
                + " GROUP BY state",
            row -> Map.entry(DeliveryState.valueOf(row.text("state")), row.number("n")),
            database.practice(),
            destination)
        .forEach(entry -> counts.put(entry.getKey(), entry.getValue()));
    return counts;
  }

  /** What is neither delivered nor due, the first one first: dead ends, and what stands behind. */
  public List<DeliveryRow> ended(String destination, int most) {
    return database.list(
        "SELECT * FROM delivery WHERE practice = ? AND destination = ? AND due_at IS NULL"
            + " AND state NOT IN ('CONFIRMED', 'WITHDRAWN') AND taken_back = 0"
            + " ORDER BY number LIMIT ?",
        DeliveryRows::read,
        database.practice(),
        destination,
        most);
  }

  /** How many deliveries to a destination need a person. */
  public int deadEnds(String destination) {
    return database
        .list(
            "SELECT count(*) AS n FROM delivery WHERE practice = ? AND destination = ? AND due_at IS"
                + " NULL AND state NOT IN ('CONFIRMED', 'WITHDRAWN') AND taken_back = 0"
                + " AND NOT (state = 'WAITING' AND behind IS NOT NULL)",
            row -> row.number("n"),
            database.practice(),
            destination)
        .get(0);
  }

  /**
   * Begins a delivery again that came to an end, as if it had never been tried.
   *
   * @return false if it is confirmed, taken back, or stands behind a note
   */
  public boolean again(long number, String who, String why) {
    return database.together(
        () -> {
          int changed =
              database.update(
                  "UPDATE delivery SET state = 'WAITING', attempts = 0, asks = 0, due_at = ?, words ="
                      + " '', changed_at = ? WHERE practice = ? AND number = ? AND taken_back = 0"
                      + " AND behind IS NULL AND state IN ('WAITING', 'REFUSED', 'FAILED', 'SENT')",
                  DeliveryRows.second(database.now()),
                  database.now(),
                  database.practice(),
                  number);
          if (changed == 1) {
            events.add(number, DeliveryState.WAITING, 0, null, "again: " + why, null, who);
          }
          return changed == 1;
        });
  }

  /** Records whether a destination could be reached at all. */
  public void reached(String destination, boolean reached, String words) {
    database.update(
        "INSERT INTO destination_event (practice, destination, reached, words, at)"
            + " VALUES (?, ?, ?, ?, ?)",
        database.practice(),
        destination,
        reached ? 1 : 0,
        words,
        database.now());
  }

  /** Records that a photograph's file left the inbox. */
  public void removed(ContentHash hash, String name) {
    database.update(
        "INSERT INTO source_removed (practice, hash, name, at) VALUES (?, ?, ?, ?)",
        database.practice(),
        hash,
        name,
        database.now());
  }
}
