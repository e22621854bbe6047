package org.vestibule.store.ledger;

/** Where a photograph stands. */
public enum PhotoState {
  /** It arrived, and nothing was decided yet. */
  SEEN,
  /** It waits for a person. */
  WAITING,
  /** It is being filed: there are intents whose objects are not kept yet. */
  INTENDED,
  /** Its objects are kept. */
  KEPT,
  /** What was kept of it was rejected, and nothing took its place. */
  REJECTED
}
