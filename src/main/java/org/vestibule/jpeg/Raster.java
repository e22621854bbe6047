package org.vestibule.jpeg;

import java.util.Objects;
import org.vestibule.base.Turn;

/** A small decoded picture: rows of sRGB pixels, {@code 0xRRGGBB}. */
public final class Raster {

  private final int width;
  private final int height;
  private final int[] rgb;

  private Raster(int width, int height, int[] rgb) {
    if (rgb.length != Math.multiplyExact(width, height)) {
      throw new IllegalArgumentException(
          width + " x " + height + " pixels were expected but " + rgb.length + " given");
    }
    this.width = width;
    this.height = height;
    this.rgb = rgb;
  }

  /** Takes the pixels over without copying them. */
  static Raster owning(int width, int height, int[] rgb) {
    return new Raster(width, height, rgb);
  }

  /** Width in pixels. */
  public int width() {
    return width;
  }

  /** Height in pixels. */
  public int height() {
    return height;
  }

  /** A copy of the pixels, row by row. */
  public int[] rgb() {
    return rgb.clone();
  }

  /** One pixel as {@code 0xRRGGBB}. */
  public int pixel(int x, int y) {
    Objects.checkIndex(x, width);
    Objects.checkIndex(y, height);
    return rgb[y * width + x];
  }

  /** The picture turned. */
  Raster turned(Turn turn) {
    if (turn == Turn.NONE) {
      return this;
    }
    int across = turn.swapsAxes() ? height : width;
    int down = turn.swapsAxes() ? width : height;
    int[] turned = new int[rgb.length];
    for (int y = 0; y < down; y++) {
      int row = turn.flipsVertically() ? down - 1 - y : y;
      for (int x = 0; x < across; x++) {
        int column = turn.flipsHorizontally() ? across - 1 - x : x;
        turned[y * across + x] =
            turn.swapsAxes() ? rgb[column * width + row] : rgb[row * width + column];
      }
    }
    return owning(across, down, turned);
  }

  /**
   * The picture made smaller by averaging, so that its longer side has at most this many pixels.
   */
  Raster fitted(int maxSide) {
    int longer = Math.max(width, height);
    if (longer <= maxSide) {
      return this;
    }
    int across = Math.max(1, (int) ((long) width * maxSide / longer));
    int down = Math.max(1, (int) ((long) height * maxSide / longer));
    int[] smaller = new int[across * down];
    int[] columns = new int[across + 1];
    for (int x = 0; x <= across; x++) {
      columns[x] = (int) ((long) x * width / across);
    }
    for (int y = 0; y < down; y++) {
      int top = (int) ((long) y * height / down);
      int bottom = (int) ((y + 1L) * height / down);
      for (int x = 0; x < across; x++) {
        boolean one = bottom - top == 1 && columns[x + 1] - columns[x] == 1;
        smaller[y * across + x] =
            one ? rgb[top * width + columns[x]] : average(columns[x], top, columns[x + 1], bottom);
      }
    }
    return owning(across, down, smaller);
  }

  private int average(int left, int top, int right, int bottom) {
    long red = 0;
    long green = 0;
    long blue = 0;
    for (int y = top; y < bottom; y++) {
      for (int x = left; x < right; x++) {
        int pixel = rgb[y * width + x];
        red += pixel >> 16;
        green += pixel >> 8 & 0xFF;
        blue += pixel & 0xFF;
      }
    }
    int count = (right - left) * (bottom - top);
    return mean(red, count) << 16 | mean(green, count) << 8 | mean(blue, count);
  }

  /** Mostly of two or four, and a division takes longer than all else. */
  private static int mean(long sum, int count) {
    long rounded = sum + count / 2;
    return (count & (count - 1)) == 0
        ? (int) (rounded >> Integer.numberOfTrailingZeros(count))
        : (int) (rounded / count);
  }
}
