package org.vestibule.store.ledger;

import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Sittings at browsers; what has ended is forgotten. */
public final class Sessions {

  private final Database database;

  Sessions(Database database) {
    this.database = database;
  }

  public void begin(SessionRow session) {
    database.update(
        "INSERT INTO session (practice, mark, account, role, scope, person, begun_at, seen_at,"
            + " ends_at) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
        database.practice(),
        session.mark(),
        session.account(),
        session.role(),
        session.scope(),
        session.person(),
        session.begunAt(),
        session.seenAt(),
        session.endsAt());
  }

  /** One that no account stands behind, and that is about all, counts only until there are any. */
  public Optional<SessionRow> find(String mark) {
    return database.one(
        "SELECT * FROM session WHERE practice = ? AND mark = ?"
            + " AND (account <> '' OR scope <> '' OR NOT EXISTS"
            + " (SELECT 1 FROM account WHERE account.practice = session.practice))",
        Sessions::read,
        database.practice(),
        mark);
  }

  public void seen(String mark, Instant at) {
    database.update(
        "UPDATE session SET seen_at = ? WHERE practice = ? AND mark = ?",
        at,
        database.practice(),
        mark);
  }

  /** Says who sits there now. */
  public void person(String mark, String person) {
    database.update(
        "UPDATE session SET person = ? WHERE practice = ? AND mark = ?",
        person,
        database.practice(),
        mark);
  }

  /**
   * Ends one.
   *
   * @return false if it had been ended before
   */
  public boolean end(String mark) {
    return database.update(
            "DELETE FROM session WHERE practice = ? AND mark = ?", database.practice(), mark)
        > 0;
  }

  /** Ends every session of a role that is about this one thing. */
  public void endScope(String role, String scope) {
    database.update(
        "DELETE FROM session WHERE practice = ? AND role = ? AND scope = ?",
        database.practice(),
        role,
        scope);
  }

  /** Sessions that are over, or that nobody used for long, and that nobody ended. */
  public List<SessionRow> past(Instant endedBefore, Instant seenBefore) {
    return database.list(
        "SELECT * FROM session WHERE practice = ? AND (ends_at < ? OR seen_at < ?)"
            + " ORDER BY begun_at",
        Sessions::read,
        database.practice(),
        endedBefore,
        seenBefore);
  }

  /** Who sat at this account's sessions before, the latest first, at most so many. */
  public List<String> people(int most) {
    return database.list(
        "SELECT person, max(seen_at) AS latest FROM session WHERE practice = ? AND person <> ''"
            + " GROUP BY person ORDER BY latest DESC LIMIT ?",
        row -> row.text("person"),
        database.practice(),
        most);
  }

  private static SessionRow read(Row row) throws SQLException {
    return new SessionRow(
        row.text("mark"),
        row.text("account"),
        row.text("role"),
        row.text("scope"),
        row.text("person"),
        row.time("begun_at"),
        row.time("seen_at"),
        row.time("ends_at"));
  }
}
