package org.vestibule.keys;

import org.vestibule.base.Outcome;

/** Carries a refusal out of nested reading; it never leaves the room. */
final class KeyRefusal extends Exception {

  private static final long serialVersionUID = 1L;

  private final String reason;
  private final String advice;

  KeyRefusal(String reason, String advice) {
    super(reason, null, false, false);
    this.reason = reason;
    this.advice = advice;
  }

  <T> Outcome<T> outcome() {
    return Outcome.refused(reason, advice);
  }
}
