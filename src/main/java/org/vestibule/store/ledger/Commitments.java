package org.vestibule.store.ledger;

import java.util.List;
import java.util.Optional;

/** Requests for storage commitment: written down before they are sent, never forgotten. */
public final class Commitments {

  private final Database database;

  Commitments(Database database) {
    this.database = database;
  }

  /** Writes a request down, in one transaction. */
  public void begin(String transactionUid, String destination, List<DeliveryRow> rows) {
    database.together(
        () -> {
          database.update(
              "INSERT INTO commitment (practice, transaction_uid, destination, at)"
                  + " VALUES (?, ?, ?, ?)",
              database.practice(),
              transactionUid,
              destination,
              database.now());
          for (DeliveryRow row : rows) {
            database.update(
                "INSERT INTO commitment_item (practice, transaction_uid, delivery)"
                    + " VALUES (?, ?, ?)",
                database.practice(),
                transactionUid,
                row.number());
          }
          return rows;
        });
  }

  /** The destination that was asked in this transaction. */
  public Optional<String> destination(String transactionUid) {
    return database.one(
        "SELECT destination FROM commitment WHERE practice = ? AND transaction_uid = ?",
        row -> row.text("destination"),
        database.practice(),
        transactionUid);
  }

  /** What was asked for in this transaction, as it stands now. */
  public List<DeliveryRow> items(String transactionUid) {
    return database.list(
        "SELECT d.* FROM commitment_item c JOIN delivery d ON d.number = c.delivery"
            + " WHERE c.practice = ? AND c.transaction_uid = ? ORDER BY d.number",
        DeliveryRows::read,
        database.practice(),
        transactionUid);
  }
}
