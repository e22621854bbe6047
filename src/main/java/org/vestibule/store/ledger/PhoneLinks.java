package org.vestibule.store.ledger;

import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Pages that were opened for one visit each, for phones. */
public final class PhoneLinks {

  private static final String ALL =
      "SELECT l.*, e.at AS ended FROM phone_link l LEFT JOIN phone_link_end e"
          + " ON e.practice = l.practice AND e.link = l.number WHERE l.practice = ?";

  private final Database database;

  PhoneLinks(Database database) {
    this.database = database;
  }

  /** Opens one. */
  public PhoneLinkRow open(String mark, String visit, String series, String who, Instant endsAt) {
    return database.together(
        () -> {
          database.update(
              "INSERT INTO phone_link (practice, mark, visit, series, who, at, ends_at)"
                  + " VALUES (?, ?, ?, ?, ?, ?, ?)",
              database.practice(),
              mark,
              visit,
              series,
              who,
              database.now(),
              endsAt);
          return find(mark).orElseThrow();
        });
  }

  public Optional<PhoneLinkRow> find(String mark) {
    return database.one(ALL + " AND l.mark = ?", PhoneLinks::read, database.practice(), mark);
  }

  public Optional<PhoneLinkRow> find(int number) {
    return database.one(ALL + " AND l.number = ?", PhoneLinks::read, database.practice(), number);
  }

  /** Those that end after this moment and that nobody ended, the newest first. */
  public List<PhoneLinkRow> open(Instant now) {
    return database.list(
        ALL + " AND e.at IS NULL AND l.ends_at > ? ORDER BY l.number DESC",
        PhoneLinks::read,
        database.practice(),
        now);
  }

  /** Ends one; false if it was ended before. */
  public boolean end(int number, String who) {
    return database.update(
            "INSERT OR IGNORE INTO phone_link_end (practice, link, who, at) VALUES (?, ?, ?, ?)",
            database.practice(),
            number,
            who,
            database.now())
        == 1;
  }

  private static PhoneLinkRow read(Row row) throws SQLException {
    String ended = row.textOrNull("ended");
    return new PhoneLinkRow(
        row.number("number"),
        row.text("mark"),
        row.text("visit"),
        row.text("series"),
        row.text("who"),
        row.time("at"),
        row.time("ends_at"),
        ended == null ? null : Instant.parse(ended));
  }
}
