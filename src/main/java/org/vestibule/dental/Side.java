package org.vestibule.dental;

/** The patient's side, never the viewer's. */
public enum Side {
  RIGHT("right"),
  LEFT("left");

  private final String words;

  Side(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
