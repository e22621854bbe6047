package org.vestibule.flow.delivering;

import org.vestibule.store.ledger.DeliveryRow;

/** Deliveries in words. */
final class DeliveryWords {

  private DeliveryWords() {}

  static String state(DeliveryRow row) {
    if (row.takenBack()) {
      return "taken back here";
    }
    return switch (row.state()) {
      case WAITING -> row.behind() == null ? "waiting" : "waiting behind its note";
      case SENT -> row.isDeadEnd() ? "sent, never confirmed" : "sent, not yet confirmed";
      case CONFIRMED -> "confirmed";
      case REFUSED -> "refused";
      case FAILED -> row.isDeadEnd() ? "failed for good" : "failed, tried again later";
      case WITHDRAWN -> "taken back before it was sent";
    };
  }

  /** What a person can do; empty if nothing needs to be done. */
  static String advice(DeliveryRow row) {
    if (row.behind() != null && !row.takenBack()) {
      return "the note that takes the earlier object back must be confirmed first";
    }
    if (!row.isDeadEnd()) {
      return "";
    }
    return row.note()
        ? "have the archive take notes (Key Object Selection), then \"vestibule forward again\"; or"
            + " have the old object taken out there by hand, then \"vestibule forward by-hand\""
        : "mend the reason, then \"vestibule forward again\"; docs/delivery.md has the reasons";
  }
}
