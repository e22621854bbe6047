package org.vestibule.deid;

/** What Table E.1-1 does with an attribute (PS3.15 E.1.1). */
enum Action {
  /** Replaced by a value that is not empty and says nothing. */
  D,
  /** Emptied, or replaced as by D. */
  Z,
  /** Removed. */
  X,
  /** Kept; the items of a sequence are gone through by their own rows. */
  K,
  /** Replaced by a value of like meaning that identifies nobody. */
  C,
  /** Replaced by another UID, the same one for the same UID. */
  U
}
