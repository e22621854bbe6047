package org.vestibule.dental;

/** One of the two rows of teeth. */
public enum Arch {
  UPPER("upper"),
  LOWER("lower");

  private final String words;

  Arch(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
