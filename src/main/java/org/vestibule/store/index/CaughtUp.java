package org.vestibule.store.index;

/**
 * What came of letting the index follow the ledger.
 *
 * @param kind what was done
 * @param changes how many changes were applied
 * @param why for people, empty unless it was rebuilt
 */
public record CaughtUp(Kind kind, long changes, String why) {

  /** What was done. */
  public enum Kind {
    /** There was nothing to do. */
    CURRENT,
    /** What was missing was applied. */
    APPLIED,
    /** It did not fit the ledger and was made again. */
    REBUILT,
    /** Another process is writing the index and will apply what is missing. */
    BUSY,
    /** Another process is making the index, which answers nothing before it is done. */
    BEING_MADE
  }
}
