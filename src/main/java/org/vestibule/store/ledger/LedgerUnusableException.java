package org.vestibule.store.ledger;

import java.io.IOException;
import java.io.UncheckedIOException;

/** The machine does not let the ledger be read or written: held, full, damaged, out of reach. */
public final class LedgerUnusableException extends UncheckedIOException {

  private static final long serialVersionUID = 1L;

  /** What the person has to deal with. */
  public enum Trouble {
    /** The disk is full. */
    DISK_FULL,
    /** The file or its folder can't be read or written. */
    MACHINE,
    /** Another process holds the ledger for longer than anybody waits. */
    HELD,
    /** The file's content is no longer what SQLite wrote. */
    DAMAGE
  }

  private final Trouble trouble;

  LedgerUnusableException(String message, Throwable cause, Trouble trouble) {
    super(message, new IOException(message, cause));
    this.trouble = trouble;
  }

  public Trouble trouble() {
    return trouble;
  }
}
