package org.vestibule.jpeg;

/** Coded frame size in samples, before Exif orientation (ITU-T T.81 B.2.2). */
public record FrameSize(int width, int height) {

  private static final int LARGEST = 65535;

  public FrameSize {
    requireIn(width, "width");
    requireIn(height, "height");
  }

  /** The number of samples of the largest component. */
  public long area() {
    return (long) width * height;
  }

  private static void requireIn(int value, String name) {
    if (value < 1 || value > LARGEST) {
      throw new IllegalArgumentException(name + " must be 1 to " + LARGEST + " but was " + value);
    }
  }
}
