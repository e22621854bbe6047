package org.vestibule.jpeg;

/** What the components of a picture stand for. */
public enum ColourModel {
  GRAY("gray"),
  YCBCR("YCbCr"),
  RGB("RGB components"),
  CMYK("CMYK"),
  YCCK("YCCK"),
  UNKNOWN("of an unknown kind");

  private final String words;

  ColourModel(String words) {
    this.words = words;
  }

  /** The model in words. */
  public String words() {
    return words;
  }
}
