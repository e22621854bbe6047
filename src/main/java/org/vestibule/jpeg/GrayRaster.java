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

  /**
   * A rectangle of the picture.
   *
   * @param left first sample across
   * @param top first row
   * @param right sample after the last, across
   * @param bottom row after the last
   */
  GrayRaster part(int left, int top, int right, int bottom) {
    Objects.checkFromToIndex(left, right, width);
    Objects.checkFromToIndex(top, bottom, height);
    byte[] part = new byte[(right - left) * (bottom - top)];
    for (int y = top; y < bottom; y++) {
      System.arraycopy(samples, y * width + left, part, (y - top) * (right - left), right - left);
    }
    return owning(right - left, bottom - top, part);
  }

  /** One sample, 0 to 255. */
  public int sample(int x, int y) {
    Objects.checkIndex(x, width);
    Objects.checkIndex(y, height);
    return samples[y * width + x] & 0xFF;
  }
}
