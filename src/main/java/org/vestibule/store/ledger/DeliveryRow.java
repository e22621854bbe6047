package org.vestibule.store.ledger;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;

/**
 * An object on its way to one destination, as it stands now.
 *
 * @param number counts the deliveries in the order in which they began
 * @param note true for the note that takes a revision back, false for an object with a picture
 * @param hash of the photograph
 * @param revision of the object; for a note, the one it takes back
 * @param sopUid null for a note that is not made yet
 * @param sopClass null until it was sent once
 * @param behind the number of the note that must be confirmed before this is sent
 * @param perhapsThere true if the destination may have it, whatever it said
 * @param takenBack true if a note to the same destination says that it no longer counts
 * @param attempts how often it was sent
 * @param asks how often a confirmation was asked for since it was sent
 * @param dueAt when something is to be done about it; null if nothing is
 * @param status the last one the destination gave, if it gave one
 * @param words what the last answer says; may be empty
 */
public record DeliveryRow(
    long number,
    String destination,
    boolean note,
    ContentHash hash,
    int revision,
    @Nullable String sopUid,
    @Nullable String sopClass,
    @Nullable String studyUid,
    @Nullable String seriesUid,
    @Nullable Long behind,
    DeliveryState state,
    boolean perhapsThere,
    boolean takenBack,
    int attempts,
    int asks,
    @Nullable Instant dueAt,
    @Nullable Integer status,
    String words,
    Instant changedAt) {

  /** True if nothing more happens by itself and it is not delivered: a person has to look. */
  public boolean isDeadEnd() {
    return switch (state) {
      case REFUSED -> !takenBack;
      case WAITING, SENT, FAILED -> dueAt == null && behind == null && !takenBack;
      case CONFIRMED, WITHDRAWN -> false;
    };
  }
}
