package org.vestibule.jpeg;

import java.util.Objects;

/** A small picture's brightness: rows of samples, 0 (black) to 255 (white). */
public final class GrayRaster {

  private final int width;
  private final int height;
  private final byte[] samples;

  private GrayRaster(int width, int height, byte[] samples) {
    if (samples.length != Math.multiplyExact(width, height)) {
      throw new IllegalArgumentException(
          width + " x " + height + " samples were expected but " + samples.length + " given");
    }
    this.width = width;
    this.height = height;
    this.samples = samples;
  }

  /** Takes the samples over without copying them. */
  static GrayRaster owning(int width, int height, byte[] samples) {
    return new GrayRaster(width, height, samples);
  }

  /** A picture of these samples, row by row. */
  public static GrayRaster of(int width, int height, byte[] samples) {
    return new GrayRaster(width, height, samples.clone());
  }

  /** Width in samples. */
  public int width() {
    return width;
  }

  /** Height in samples. */
  public int height() {
    return height;
  }

  /** A copy of the samples, row by row, each byte unsigned. */
  public byte[] samples() {
    return samples.clone();
  }

  /** One sample, 0 to 255. */
  public int sample(int x, int y) {
    Objects.checkIndex(x, width);
    Objects.checkIndex(y, height);
    return samples[y * width + x] & 0xFF;
  }
}
