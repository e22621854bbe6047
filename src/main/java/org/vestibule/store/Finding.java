package org.vestibule.store;

/**
 * Something that is wrong with the store.
 *
 * @param what found and expected, in words
 * @param advice what to do next
 */
public record Finding(Kind kind, String what, String advice) {

  /** What sort of thing is wrong. */
  public enum Kind {
    /** Bytes changed after they were kept. */
    DAMAGE,
    /** The ledger says an object is kept, and it isn't there. */
    MISSING,
    /** An object is there that the ledger knows nothing of. */
    ORPHAN,
    /** Something was begun and not finished. */
    GAP,
    /** A file that is no object, such as what an interrupted write left. */
    STRAY,
    /** An object of a filing that was given up: in no record and no search, and it may stay. */
    GIVEN_UP,
    /** The index does not say what the ledger says. */
    INDEX
  }

  /** True if the record itself is hurt; otherwise the next run, or reindex, sets it right. */
  public boolean isSerious() {
    return kind == Kind.DAMAGE || kind == Kind.MISSING || kind == Kind.ORPHAN;
  }

  /** False if it is only said, and nothing needs to be done. */
  public boolean asksForAPerson() {
    return kind != Kind.GIVEN_UP;
  }
}
