package org.vestibule.simulator;

/** What a practice does to help its photographs find their patients. */
public enum Regime {
  /** A folder of files and nothing else. */
  NOTHING("nothing"),
  /** Somebody sorts the files into a folder for each patient; no visits are known. */
  FOLDERS("patient folders"),
  /** Folders for each patient, and the day's visits with their times. */
  FOLDERS_AND_LIST("patient folders and list"),
  /** The day's visits with their times. */
  LIST("visit list"),
  /** The visit card is photographed before a visit's photographs; the visits' times are known. */
  OPENING_CARD("opening card"),
  /** The visit card is photographed before and after; the visits' times are known. */
  BOTH_CARDS("opening and closing card"),
  /** The visit card is photographed before and after; nobody stated times. */
  BOTH_CARDS_NO_TIMES("both cards, no times");

  private final String words;

  Regime(String words) {
    this.words = words;
  }

  /** The regime in words. */
  public String words() {
    return words;
  }

  /** True if the files lie in a folder for each patient. */
  public boolean folders() {
    return this == FOLDERS || this == FOLDERS_AND_LIST;
  }

  /** True if the day's visits are known. */
  public boolean list() {
    return this != NOTHING && this != FOLDERS;
  }

  /** True if the planned times of the visits are known. */
  public boolean times() {
    return list() && this != BOTH_CARDS_NO_TIMES;
  }

  /** True if a visit card is photographed before each visit's photographs. */
  public boolean cards() {
    return this == OPENING_CARD || closing();
  }

  /** True if the visit card is photographed again after them. */
  public boolean closing() {
    return this == BOTH_CARDS || this == BOTH_CARDS_NO_TIMES;
  }
}
