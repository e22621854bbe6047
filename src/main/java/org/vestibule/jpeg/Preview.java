package org.vestibule.jpeg;

import java.util.ArrayList;
import java.util.List;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;

/**
 * Small pictures for the eye, made from the coefficients without decoding every sample. A colour
 * profile is not applied.
 */
public final class Preview {

  private static final int LARGEST_SIDE = 4096;

  /** Samples of a brightness block along an axis, 1, 2, 4 or 8: the scale in eighths. */
  private final int eighths;

  private final JpegFrame frame;
  private final int width;
  private final int height;

  private Preview(JpegFrame frame, int eighths) {
    this.frame = frame;
    this.eighths = eighths;
    this.width = scaled(frame.size().width(), eighths);
    this.height = scaled(frame.size().height(), eighths);
  }

  /**
   * A file's first picture, turned.
   *
   * @param maxSide the longer side has at most this many pixels, 1 to 4096
   */
  public static Outcome<Raster> of(byte[] bytes, int maxSide, Turn turn) {
    return Coefficients.decode(bytes).map(picture -> of(picture, maxSide, turn));
  }

  /** A decoded picture, turned. */
  public static Raster of(Coefficients picture, int maxSide, Turn turn) {
    if (maxSide < 1 || maxSide > LARGEST_SIDE) {
      throw new IllegalArgumentException(
          "maxSide must be 1 to " + LARGEST_SIDE + " but was " + maxSide);
    }
    FrameSize size = picture.frame().size();
    int longer = Math.max(size.width(), size.height());
    int eighths = 1;
    while (eighths < 8 && scaled(longer, eighths) < maxSide) {
      eighths *= 2;
    }
    return new Preview(picture.frame(), eighths).raster(picture).fitted(maxSide).turned(turn);
  }

  private static int scaled(int samples, int eighths) {
    return (samples * eighths + 7) / 8;
  }

  private Raster raster(Coefficients picture) {
    List<Plane> planes = new ArrayList<>();
    for (ComponentBlocks blocks : picture.components()) {
      planes.add(plane(blocks));
    }
    int[] rgb = new int[Math.multiplyExact(width, height)];
    boolean direct = picture.structure().colourModel() == ColourModel.RGB;
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        int first = planes.get(0).sample(x, y);
        int pixel;
        if (planes.size() == 1) {
          pixel = first * 0x010101;
        } else {
          int second = planes.get(1).sample(x, y);
          int third = planes.get(2).sample(x, y);
          pixel = direct ? first << 16 | second << 8 | third : colour(first, second, third);
        }
        rgb[y * width + x] = pixel;
      }
    }
    return new Raster(width, height, rgb);
  }

  /** YCbCr to sRGB (ITU-T T.871, clause 7). */
  private static int colour(int y, int cb, int cr) {
    double blue = cb - 128.0;
    double red = cr - 128.0;
    return clamp(y + 1.402 * red) << 16
        | clamp(y - 0.344136 * blue - 0.714136 * red) << 8
        | clamp(y + 1.772 * blue);
  }

  private static int clamp(double value) {
    return (int) Math.max(0, Math.min(255, Math.round(value)));
  }

  /** A coarser component is reduced less, so that its blocks cover as many pixels. */
  private Plane plane(ComponentBlocks blocks) {
    boolean single = frame.components().size() == 1;
    int horizontal = single ? 1 : blocks.component.horizontal();
    int vertical = single ? 1 : blocks.component.vertical();
    int maxHorizontal = single ? 1 : frame.maxHorizontal();
    int maxVertical = single ? 1 : frame.maxVertical();
    int across = Math.min(8, eighths * maxHorizontal / horizontal);
    int down = Math.min(8, eighths * maxVertical / vertical);
    int stride = Math.multiplyExact(blocks.grid.wide(), across);
    byte[] samples = new byte[Math.multiplyExact(stride, blocks.grid.high() * down)];
    ReducedInverse inverse = new ReducedInverse(across, down);
    for (int row = 0; row < blocks.grid.high(); row++) {
      for (int column = 0; column < blocks.grid.wide(); column++) {
        inverse.block(
            blocks.values,
            blocks.base(row, column),
            blocks.quantisation,
            samples,
            row * down * stride + column * across,
            stride);
      }
    }
    return new Plane(
        samples,
        stride,
        places(width, stride, across * horizontal, eighths * maxHorizontal),
        places(height, blocks.grid.high() * down, down * vertical, eighths * maxVertical));
  }

  /** The plane's sample for each pixel along an axis. */
  private static int[] places(int pixels, int samples, int dividend, int divisor) {
    int[] places = new int[pixels];
    for (int i = 0; i < pixels; i++) {
      places[i] = (int) Math.min(samples - 1L, (long) i * dividend / divisor);
    }
    return places;
  }

  /** One component's samples and where each pixel finds its own. */
  private static final class Plane {

    private final byte[] samples;
    private final int stride;
    private final int[] columns;
    private final int[] rows;

    Plane(byte[] samples, int stride, int[] columns, int[] rows) {
      this.samples = samples;
      this.stride = stride;
      this.columns = columns;
      this.rows = rows;
    }

    int sample(int x, int y) {
      return samples[rows[y] * stride + columns[x]] & 0xFF;
    }
  }
}
