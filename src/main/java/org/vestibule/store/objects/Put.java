package org.vestibule.store.objects;

/** How an object came to be in the store. */
public enum Put {
  /** It was written now. */
  WRITTEN,
  /** It was already there with the same bytes, and was not touched. */
  ADOPTED
}
