package org.vestibule.dental;

/** A way to write which tooth is meant. */
public enum Notation {
  /** Two digits, quadrant and tooth (also called FDI): 16, 1.6, 55. */
  ISO_3950("ISO 3950 (FDI)"),
  /** 1 to 32 from upper right to lower right, A to T for deciduous teeth: #3, #A. */
  UNIVERSAL("Universal"),
  /** Quadrant corner and tooth counted from the midline, deciduous by letter: UR6, 6┘, URE. */
  PALMER("Palmer");

  private final String words;

  Notation(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
