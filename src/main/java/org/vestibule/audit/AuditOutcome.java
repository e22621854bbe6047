package org.vestibule.audit;

/** How an event ended (EventOutcomeIndicator, PS3.15 A.5.2). */
public enum AuditOutcome {
  SUCCESS(0),
  /** It was, or will be, tried again. */
  MINOR_FAILURE(4),
  /** It was given up. */
  SERIOUS_FAILURE(8),
  /** It can't be tried any more, such as with a locked account. */
  MAJOR_FAILURE(12);

  private final int indicator;

  AuditOutcome(int indicator) {
    this.indicator = indicator;
  }

  int indicator() {
    return indicator;
  }
}
