package org.vestibule.store.ledger;

/** The ledger was asked for what contradicts it: a bug. */
public final class LedgerException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  LedgerException(String message) {
    super(message);
  }

  LedgerException(String message, Throwable cause) {
    super(message, cause);
  }
}
