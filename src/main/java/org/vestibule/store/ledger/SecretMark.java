package org.vestibule.store.ledger;

import java.util.Optional;
import org.vestibule.base.Outcome;
import org.vestibule.base.Uids;

/**
 * Ties a ledger to the secret it was begun with: with another one the same photographs would get
 * other identities and be filed twice.
 */
public final class SecretMark {

  private SecretMark() {}

  /** What stands for a secret: the same for the same secret, and nobody gets from it to that. */
  public static String of(Uids uids) {
    return uids.of("mark of the secret");
  }

  /** Says that the ledger was begun with this secret; a ledger without a mark gets it now. */
  static Outcome<Database> require(Database database, Uids uids) {
    String mark = of(uids);
    Optional<String> known = read(database);
    if (known.isEmpty()) {
      database.update(
          "INSERT OR IGNORE INTO secret_mark (practice, mark, at) VALUES (?, ?, ?)",
          database.practice(),
          mark,
          database.now());
      known = read(database);
    }
    return known.equals(Optional.of(mark))
        ? Outcome.done(database)
        : Outcome.refused(
            Outcome.Kind.DAMAGE,
            "the secret file practice.secret is not the one with which this ledger was begun",
            "put the secret back that belongs to this ledger; with another one the same photographs"
                + " would get other identities and be filed twice");
  }

  private static Optional<String> read(Database database) {
    return database.one(
        "SELECT mark FROM secret_mark WHERE practice = ?",
        row -> row.text("mark"),
        database.practice());
  }
}
