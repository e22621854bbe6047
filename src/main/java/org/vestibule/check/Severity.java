package org.vestibule.check;

/** How much a finding matters. */
public enum Severity {
  /** The object breaks the standard, or carries what must not be in it. */
  ERROR("error"),
  /** The object is allowed, but something in it is unusual and deserves a look. */
  WARNING("warning");

  private final String words;

  Severity(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
