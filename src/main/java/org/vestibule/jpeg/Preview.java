package org.vestibule.jpeg;

import java.util.ArrayList;
import java.util.List;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;

/**
 * Small pictures for the eye, made from the coefficients without decoding every sample: at 1/8 from
 * the DC coefficients alone, at 1/4 and 1/2 by a reduced inverse DCT. A colour profile is not
 * applied.
 */
public final class Preview {

  private static final int LARGEST_SIDE = 4096;

  /** Samples of a brightness block along an axis, 1, 2, 4 or 8: the scale in eighths. */
  private final int eighths;

  private final TokenPicture picture;

  /** The frame with rows and columns exchanged if the picture's blocks are. */
  private final JpegFrame frame;

  private final int width;
  private final int height;

  private Preview(TokenPicture picture, int eighths) {
    this.picture = picture;
    this.frame = picture.shownFrame();
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
    requireSide(maxSide);
    try {
      return Outcome.done(
          Decoding.use(bytes, turn.swapsAxes(), picture -> of(picture, maxSide, turn)));
    } catch (JpegFault fault) {
      return fault.refusal();
    }
  }

  /** A decoded picture, turned; its rows and columns are exchanged already if the turn does. */
  static Raster of(TokenPicture picture, int maxSide, Turn turn) throws JpegFault {
    requireColours(picture.structure.colourModel());
    FrameSize size = picture.structure.frame().size();
    int longer = Math.max(size.width(), size.height());
    int eighths = 1;
    while (eighths < 8 && scaled(longer, eighths) < maxSide) {
      eighths *= 2;
    }
    Turn flips = turn.swapsAxes() ? Turn.TRANSPOSE.then(turn) : turn;
    return new Preview(picture, eighths).raster().fitted(maxSide).turned(flips);
  }

  static void requireSide(int maxSide) {
    if (maxSide < 1 || maxSide > LARGEST_SIDE) {
      throw new IllegalArgumentException(
          "maxSide must be 1 to " + LARGEST_SIDE + " but was " + maxSide);
    }
  }

  private static void requireColours(ColourModel model) throws JpegFault {
    if (model != ColourModel.GRAY && model != ColourModel.YCBCR && model != ColourModel.RGB) {
      throw JpegFault.unsuited(
          "the picture's colours are " + model.words() + ", gray, YCbCr or RGB can be shown",
          "export the photo again as an ordinary colour JPEG");
    }
  }

  private static int scaled(int samples, int eighths) {
    return (samples * eighths + 7) / 8;
  }

  private Raster raster() {
    List<PreviewPlane> planes = new ArrayList<>();
    for (int i = 0; i < picture.planes.size(); i++) {
      planes.add(plane(i));
    }
    int[] rgb = new int[Math.multiplyExact(width, height)];
    boolean direct = picture.structure.colourModel() == ColourModel.RGB;
    byte[][] rows = new byte[planes.size()][width];
    for (int y = 0; y < height; y++) {
      for (int i = 0; i < rows.length; i++) {
        planes.get(i).row(y, rows[i]);
      }
      for (int x = 0; x < width; x++) {
        int first = rows[0][x] & 0xFF;
        int pixel;
        if (rows.length == 1) {
          pixel = first * 0x010101;
        } else {
          int second = rows[1][x] & 0xFF;
          int third = rows[2][x] & 0xFF;
          pixel = direct ? first << 16 | second << 8 | third : colour(first, second, third);
        }
        rgb[y * width + x] = pixel;
      }
    }
    return Raster.owning(width, height, rgb);
  }

  /** YCbCr to sRGB (ITU-T T.871, clause 7) in 1/65536. */
  private static int colour(int y, int cb, int cr) {
    int bright = (y << 16) + 32768;
    int blue = cb - 128;
    int red = cr - 128;
    return clamp(bright + 91881 * red) << 16
        | clamp(bright - 22554 * blue - 46802 * red) << 8
        | clamp(bright + 116130 * blue);
  }

  private static int clamp(int value) {
    return Math.max(0, Math.min(255, value >> 16));
  }

  /** A coarser component is reduced less, so that its blocks cover as many pixels. */
  private PreviewPlane plane(int index) {
    JpegComponent component = frame.components().get(index);
    boolean single = frame.components().size() == 1;
    int horizontal = single ? 1 : component.horizontal();
    int vertical = single ? 1 : component.vertical();
    int maxHorizontal = single ? 1 : frame.maxHorizontal();
    int maxVertical = single ? 1 : frame.maxVertical();
    int across = Math.min(8, eighths * maxHorizontal / horizontal);
    int down = Math.min(8, eighths * maxVertical / vertical);
    PreviewPlane plane = new PreviewPlane(picture, index, across, down);
    plane.pixelColumns(width, across * horizontal, eighths * maxHorizontal);
    plane.pixelRows(height, down * vertical, eighths * maxVertical);
    return plane;
  }
}
