package org.vestibule.store.ledger;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** The history of deliveries. */
final class DeliveryEvents {

  private final Database database;

  DeliveryEvents(Database database) {
    this.database = database;
  }

  void add(
      long delivery,
      DeliveryState state,
      int attempt,
      @Nullable Integer status,
      String words,
      @Nullable String transactionUid,
      String who) {
    database.update(
        "INSERT INTO delivery_event (practice, delivery, state, attempt, status, words,"
            + " transaction_uid, who, at) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
        database.practice(),
        delivery,
        state,
        attempt,
        status,
        words,
        transactionUid,
        who,
        database.now());
  }

  List<DeliveryEventRow> of(long delivery) {
    return database.list(
        "SELECT * FROM delivery_event WHERE delivery = ? ORDER BY number",
        DeliveryRows::event,
        delivery);
  }
}
