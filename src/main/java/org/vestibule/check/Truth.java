package org.vestibule.check;

/** Kleene's three values: a condition may depend on what no file can tell. */
enum Truth {
  TRUE,
  FALSE,
  UNKNOWN;

  static Truth of(boolean value) {
    return value ? TRUE : FALSE;
  }

  Truth and(Truth other) {
    if (this == FALSE || other == FALSE) {
      return FALSE;
    }
    return this == TRUE && other == TRUE ? TRUE : UNKNOWN;
  }

  Truth or(Truth other) {
    if (this == TRUE || other == TRUE) {
      return TRUE;
    }
    return this == FALSE && other == FALSE ? FALSE : UNKNOWN;
  }
}
