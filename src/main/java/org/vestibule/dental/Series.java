package org.vestibule.dental;

/** A set of views that is taken together. */
public enum Series {
  BASELINE("baseline"),
  ORTHODONTIC("orthodontic"),
  AESTHETIC("aesthetic"),
  SINGLE_RESTORATION("single restoration"),
  SHADE("shade"),
  TRAUMA("trauma"),
  LESION("lesion");

  private final String words;

  Series(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
