package org.vestibule.store.objects;

/** How an object came to be in the store, or why it did not. */
public enum Put {
  /** It was written now. */
  WRITTEN,
  /** It was already there with the same bytes, and was not touched. */
  ADOPTED,
  /** Other bytes already have its name; they were not touched, and nothing was written. */
  TAKEN
}
