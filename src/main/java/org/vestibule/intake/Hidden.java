package org.vestibule.intake;

/**
 * Something a photograph's file carries beside the picture that people looking at it don't see.
 *
 * @param kind what it is
 * @param sentence the same for people, without the value itself
 */
public record Hidden(Kind kind, String sentence) {

  /** What can hide in a file. */
  public enum Kind {
    POSITION("GPS position"),
    SERIAL_NUMBER("serial numbers"),
    OWNER("names"),
    CAPTION("captions"),
    UNIQUE_ID("unique number"),
    MAKER_NOTE("maker note"),
    THUMBNAIL("hidden thumbnail"),
    SECOND_PICTURE("second picture"),
    GAIN_MAP("gain map"),
    DEPTH_MAP("depth map"),
    VIDEO("video"),
    XMP("XMP"),
    IPTC("IPTC"),
    COMMENT("comment"),
    OTHER("other data");

    private final String words;

    Kind(String words) {
      this.words = words;
    }

    /** Two or three words for a label. */
    public String words() {
      return words;
    }
  }
}
