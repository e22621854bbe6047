package org.vestibule.store.ledger;

/** The ledger can't be read or written, or was asked for what contradicts it. */
public final class LedgerException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  LedgerException(String message) {
    super(message);
  }

  LedgerException(String message, Throwable cause) {
    super(message, cause);
  }
}
