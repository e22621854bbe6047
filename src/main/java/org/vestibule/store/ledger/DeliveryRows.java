package org.vestibule.store.ledger;

import java.sql.SQLException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import org.jspecify.annotations.Nullable;

/** Reads the rows of deliveries. */
final class DeliveryRows {

  private DeliveryRows() {}

  static DeliveryRow read(Row row) throws SQLException {
    long behind = row.large("behind");
    return new DeliveryRow(
        row.large("number"),
        row.text("destination"),
        row.text("kind").equals("NOTE"),
        row.hash("hash"),
        row.number("revision"),
        row.textOrNull("sop_uid"),
        row.textOrNull("sop_class"),
        row.textOrNull("study_uid"),
        row.textOrNull("series_uid"),
        behind == 0 ? null : behind,
        DeliveryState.valueOf(row.text("state")),
        row.number("perhaps_there") != 0,
        row.number("taken_back") != 0,
        row.number("attempts"),
        row.number("asks"),
        time(row.textOrNull("due_at")),
        row.numberOrNull("status"),
        row.text("words"),
        row.time("changed_at"));
  }

  static DeliveryEventRow event(Row row) throws SQLException {
    return new DeliveryEventRow(
        row.large("delivery"),
        DeliveryState.valueOf(row.text("state")),
        row.number("attempt"),
        row.numberOrNull("status"),
        row.text("words"),
        row.textOrNull("transaction_uid"),
        row.text("who"),
        row.time("at"));
  }

  /** Whole seconds, so that times that are due compare as text too. */
  static @Nullable Instant second(@Nullable Instant time) {
    return time == null ? null : time.truncatedTo(ChronoUnit.SECONDS);
  }

  private static @Nullable Instant time(@Nullable String text) {
    return text == null ? null : Instant.parse(text);
  }
}
