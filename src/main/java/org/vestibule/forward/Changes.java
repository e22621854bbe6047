package org.vestibule.forward;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.vestibule.store.ledger.DeliveryChange;
import org.vestibule.store.ledger.DeliveryRow;
import org.vestibule.store.ledger.DeliveryState;

/** What a delivery becomes after each kind of answer. */
final class Changes {

  private final ForwardRules rules;
  private final RetryPauses pauses;
  private final Clock clock;

  Changes(ForwardRules rules, RetryPauses pauses, Clock clock) {
    this.rules = rules;
    this.pauses = pauses;
    this.clock = clock;
  }

  /** The destination took it: it is asked for a confirmation next. */
  DeliveryChange sent(
      DeliveryRow row, int status, String words, Map<String, DeliveryChange.Changed> coerced) {
    return new DeliveryChange(
        row.number(),
        DeliveryState.SENT,
        row.attempts() + 1,
        0,
        true,
        clock.instant(),
        status < 0 ? null : status,
        words,
        null,
        coerced);
  }

  /** The destination will not take it; it may have it from an earlier attempt. */
  DeliveryChange refused(DeliveryRow row, int attempts, int status, String words) {
    return of(row, DeliveryState.REFUSED, attempts, false, null, status, words);
  }

  /**
   * It did not get there; it is tried again later, unless that was tried often enough.
   *
   * @param perhapsThere true if the destination may have it from this attempt all the same
   */
  DeliveryChange failed(
      DeliveryRow row, int attempts, boolean perhapsThere, int status, String words) {
    boolean again = attempts < rules.attempts() && !row.takenBack();
    Instant due = again ? clock.instant().plus(pauses.after(attempts)) : null;
    return of(row, DeliveryState.FAILED, attempts, perhapsThere, due, status, words);
  }

  /** The destination takes nothing now: that is not this object's fault, and is not counted. */
  DeliveryChange putOff(DeliveryRow row, boolean perhapsThere, int status, String words) {
    Instant due = clock.instant().plus(pauses.after(1));
    return of(row, DeliveryState.FAILED, row.attempts(), perhapsThere, due, status, words);
  }

  /** The destination keeps it. */
  DeliveryChange confirmed(
      DeliveryRow row,
      String words,
      @Nullable String transactionUid,
      Map<String, DeliveryChange.Changed> coerced) {
    return new DeliveryChange(
        row.number(),
        DeliveryState.CONFIRMED,
        row.attempts(),
        row.asks() + 1,
        true,
        null,
        row.status(),
        words,
        transactionUid,
        coerced);
  }

  /**
   * A confirmation was asked for and has not come.
   *
   * @param asks how often by now
   * @param wait until it is asked for again; null if it is not
   */
  DeliveryChange unconfirmed(
      DeliveryRow row,
      int asks,
      @Nullable Duration wait,
      String words,
      @Nullable String transactionUid) {
    return new DeliveryChange(
        row.number(),
        DeliveryState.SENT,
        row.attempts(),
        asks,
        true,
        wait == null ? null : clock.instant().plus(wait),
        row.status(),
        words,
        transactionUid,
        Map.of());
  }

  private static DeliveryChange of(
      DeliveryRow row,
      DeliveryState state,
      int attempts,
      boolean perhapsThere,
      @Nullable Instant due,
      int status,
      String words) {
    return new DeliveryChange(
        row.number(),
        state,
        attempts,
        row.asks(),
        perhapsThere,
        due,
        status < 0 ? null : status,
        words,
        null,
        Map.of());
  }
}
