package org.vestibule.assign;

import org.vestibule.base.Outcome;

/** A refusal on its way out of nested readers of this room; its caller makes it an outcome. */
final class Refusal extends Exception {

  private static final long serialVersionUID = 1L;

  private final String reason;
  private final String advice;

  Refusal(String reason, String advice) {
    super(reason, null, false, false);
    this.reason = reason;
    this.advice = advice;
  }

  /** The value of a done outcome. */
  static <T> T require(Outcome<T> outcome) throws Refusal {
    if (outcome instanceof Outcome.Done<T> done) {
      return done.value();
    }
    Outcome.Refused<T> refused = (Outcome.Refused<T>) outcome;
    throw new Refusal(refused.reason(), refused.advice());
  }

  String reason() {
    return reason;
  }

  String advice() {
    return advice;
  }

  <T> Outcome<T> outcome() {
    return Outcome.refused(reason, advice);
  }
}
