package org.vestibule.store.ledger;

import java.time.Instant;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What became of one delivery.
 *
 * @param delivery its number
 * @param state from now on
 * @param attempts how often it was sent by now
 * @param asks how often a confirmation was asked for since it was sent
 * @param perhapsThere true if the destination may have it now; false says nothing, since an answer
 *     to one attempt does not undo an earlier one ({@link Deliveries#notArrived})
 * @param dueAt when something is to be done about it next; null if nothing is
 * @param status as the destination gave it, if it gave one
 * @param words one line for people
 * @param transactionUid of the storage commitment that this is about, if it is about one
 * @param coerced what the destination changed: keyword to {@code {ours, theirs}}
 */
public record DeliveryChange(
    long delivery,
    DeliveryState state,
    int attempts,
    int asks,
    boolean perhapsThere,
    @Nullable Instant dueAt,
    @Nullable Integer status,
    String words,
    @Nullable String transactionUid,
    Map<String, Changed> coerced) {

  /** A value as the object has it and as the destination has it. */
  public record Changed(String ours, String theirs) {}

  public DeliveryChange {
    coerced = Map.copyOf(coerced);
  }
}
