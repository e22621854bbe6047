package org.vestibule.store.ledger;

import java.sql.SQLException;
import java.util.List;
import java.util.Optional;

/** Who may use the pages. */
public final class Accounts {

  private final Database database;
  private final Events events;

  Accounts(Database database, Events events) {
    this.database = database;
    this.events = events;
  }

  /**
   * Lets somebody in; false if the name is taken. Sittings that no account stands behind, and that
   * are not about one thing alone, end with it.
   */
  public boolean add(String name, String role, String password, String by) {
    return database.together(
        () -> {
          if (find(name).isPresent()) {
            return false;
          }
          database.update(
              "INSERT INTO account (practice, name, role, password, added_by, at)"
                  + " VALUES (?, ?, ?, ?, ?, ?)",
              database.practice(),
              name,
              role,
              password,
              by,
              database.now());
          database.update(
              "DELETE FROM session WHERE practice = ? AND account = '' AND scope = ''",
              database.practice());
          events.add(by, "account added: " + name + ", " + role, null, "");
          return true;
        });
  }

  /** Gives an account another password and ends its sessions; false if there is none. */
  public boolean password(String name, String password, String by) {
    return database.together(
        () -> {
          int changed =
              database.update(
                  "UPDATE account SET password = ? WHERE practice = ? AND name = ?",
                  password,
                  database.practice(),
                  name);
          return changed > 0 && ended(name, by, "account got another password: ");
        });
  }

  /** Takes an account away and ends its sessions; false if there is none. */
  public boolean remove(String name, String by) {
    return database.together(
        () -> {
          int gone =
              database.update(
                  "DELETE FROM account WHERE practice = ? AND name = ?", database.practice(), name);
          return gone > 0 && ended(name, by, "account removed: ");
        });
  }

  private boolean ended(String name, String by, String what) {
    database.update(
        "DELETE FROM session WHERE practice = ? AND account = ?", database.practice(), name);
    events.add(by, what + name, null, "");
    return true;
  }

  public Optional<AccountRow> find(String name) {
    return database.one(
        "SELECT * FROM account WHERE practice = ? AND name = ?",
        Accounts::read,
        database.practice(),
        name);
  }

  /** All of them, by name. */
  public List<AccountRow> all() {
    return database.list(
        "SELECT * FROM account WHERE practice = ? ORDER BY name",
        Accounts::read,
        database.practice());
  }

  private static AccountRow read(Row row) throws SQLException {
    return new AccountRow(
        row.text("name"),
        row.text("role"),
        row.text("password"),
        row.text("added_by"),
        row.time("at"));
  }
}
