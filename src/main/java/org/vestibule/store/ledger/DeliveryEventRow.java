package org.vestibule.store.ledger;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * One step of a delivery.
 *
 * @param status as the destination gave it, if it gave one
 * @param who whose run or word it was
 */
public record DeliveryEventRow(
    long delivery,
    DeliveryState state,
    int attempt,
    @Nullable Integer status,
    String words,
    @Nullable String transactionUid,
    String who,
    Instant at) {}
