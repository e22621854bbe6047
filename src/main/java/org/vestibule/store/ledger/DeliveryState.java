package org.vestibule.store.ledger;

/** How far an object is on its way to one destination. */
public enum DeliveryState {
  /** Nothing was sent yet, or it is sent again from the beginning. */
  WAITING,
  /** The destination has taken it and has not yet confirmed it. */
  SENT,
  /** The destination has said that it keeps it. */
  CONFIRMED,
  /** The destination will not take it; that needs a person. */
  REFUSED,
  /** It did not get there; it is tried again while something is due. */
  FAILED,
  /** It was taken back here before it was ever sent, and is not sent. */
  WITHDRAWN
}
