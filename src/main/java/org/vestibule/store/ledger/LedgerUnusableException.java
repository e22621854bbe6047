package org.vestibule.store.ledger;

import java.io.IOException;
import java.io.UncheckedIOException;

/** The machine does not let the ledger be read or written: held, full, damaged, out of reach. */
public final class LedgerUnusableException extends UncheckedIOException {

  private static final long serialVersionUID = 1L;

  LedgerUnusableException(String message, Throwable cause) {
    super(message, new IOException(message, cause));
  }
}
