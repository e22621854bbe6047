package org.vestibule.quality;

/** What is looked at. */
public enum QualityKind {
  /** Ratio of digital zoom. */
  DIGITAL_ZOOM("digital zoom"),
  /** Share of the tooth-coloured surface that is burnt out, 0 to 1. */
  BURNT_OUT_TEETH("burnt-out teeth"),
  /** Share of the picture that is covered by reflections, 0 to 1. */
  GLARE("reflections"),
  /** Sharpness as a part of what is usual in its series, 0 upwards. */
  BLUR("blur"),
  /** Colour difference CIEDE2000 between the grey card and a grey of its lightness. */
  COLOUR_CAST("colour cast"),
  /** Size of the camera's frame in millions of pixels. */
  FEW_PIXELS("few pixels"),
  /** Slant of a row of teeth against the picture's edge in degrees. */
  TILT("tilt");

  private final String words;

  QualityKind(String words) {
    this.words = words;
  }

  /** The kind in words. */
  public String words() {
    return words;
  }
}
