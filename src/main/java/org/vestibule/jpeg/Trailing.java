package org.vestibule.jpeg;

/**
 * A stretch of bytes after the end of the first picture.
 *
 * @param kind what the bytes are
 * @param offsetBytes where they start, from the start of the file
 * @param lengthBytes how many they are
 */
public record Trailing(Kind kind, long offsetBytes, long lengthBytes) {

  /** What stands after the first picture's EOI. */
  public enum Kind {
    JPEG_PICTURE("a further JPEG picture"),
    VIDEO("a video"),
    ZEROS("padding"),
    OTHER("other data");

    private final String words;

    Kind(String words) {
      this.words = words;
    }

    /** The kind in words. */
    public String words() {
      return words;
    }
  }
}
