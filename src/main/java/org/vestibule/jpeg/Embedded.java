package org.vestibule.jpeg;

/** What the segments of a picture carry beside the picture itself. */
public enum Embedded {
  JFIF("a JFIF header"),
  JFIF_THUMBNAIL("a thumbnail in the JFIF header"),
  EXIF("Exif data"),
  EXIF_THUMBNAIL("a thumbnail in the Exif data"),
  GPS("a position"),
  MAKER_NOTE("a maker note"),
  XMP("XMP"),
  EXTENDED_XMP("extended XMP"),
  GAIN_MAP("a gain map's description"),
  PHOTOSHOP("Photoshop resources"),
  PHOTOSHOP_THUMBNAIL("a thumbnail in the Photoshop resources"),
  IPTC("IPTC captions"),
  ICC_PROFILE("a colour profile"),
  MULTI_PICTURE("a multi-picture index"),
  ADOBE("an Adobe colour marker"),
  COMMENT("a comment"),
  OTHER_APPLICATION_DATA("other application data");

  private final String words;

  Embedded(String words) {
    this.words = words;
  }

  /** What it is, in words. */
  public String words() {
    return words;
  }
}
