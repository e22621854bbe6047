package org.vestibule.store.index;

/** A field and the value it should have. */
public record IndexTerm(IndexField field, String value) {}
