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

  private final JpegStructure structure;
  private final List<PreviewPlane> planes;
  private final int width;
  private final int height;

  /**
   * A preview to be made.
   *
   * @param frame as shown
   * @param eighths samples of a brightness block along an axis, 1, 2, 4 or 8
   * @param planes the components' samples, which are told here where pixels find them
   */
  private Preview(
      JpegStructure structure, JpegFrame frame, int eighths, List<PreviewPlane> planes) {
    this.structure = structure;
    this.planes = planes;
    this.width = scaled(frame.size().width(), eighths);
    this.height = scaled(frame.size().height(), eighths);
    for (int i = 0; i < planes.size(); i++) {
      PreviewScale scale = PreviewScale.of(frame, frame.components().get(i), eighths);
      planes.get(i).pixelColumns(width, scale.columns(), scale.columnsOf());
      planes.get(i).pixelRows(height, scale.rows(), scale.rowsOf());
    }
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
    requireColours(picture.structure);
    int eighths = eighths(picture.structure.frame(), maxSide);
    JpegFrame frame = picture.shownFrame();
    List<PreviewPlane> planes = new ArrayList<>();
    for (int i = 0; i < picture.planes.size(); i++) {
      PreviewScale scale = PreviewScale.of(frame, frame.components().get(i), eighths);
      planes.add(PreviewPlane.of(picture, i, scale.across(), scale.down()));
    }
    Turn flips = turn.swapsAxes() ? Turn.TRANSPOSE.then(turn) : turn;
    return new Preview(picture.structure, frame, eighths, planes)
        .raster()
        .fitted(maxSide)
        .turned(flips);
  }

  /** A picture of planes at 1/8, as stored. */
  static Raster of(JpegStructure structure, List<PreviewPlane> planes, int maxSide) {
    return new Preview(structure, structure.frame(), 1, planes).raster().fitted(maxSide);
  }

  /** The scale at which a preview of this size is made, in eighths: 1, 2, 4 or 8. */
  static int eighths(JpegFrame frame, int maxSide) {
    int longer = Math.max(frame.size().width(), frame.size().height());
    int eighths = 1;
    while (eighths < 8 && scaled(longer, eighths) < maxSide) {
      eighths *= 2;
    }
    return eighths;
  }

  static void requireSide(int maxSide) {
    if (maxSide < 1 || maxSide > LARGEST_SIDE) {
      throw new IllegalArgumentException(
          "maxSide must be 1 to " + LARGEST_SIDE + " but was " + maxSide);
    }
  }

  /** True if a picture's colours can be shown. */
  static boolean canShow(JpegStructure structure) {
    ColourModel model = structure.colourModel();
    return model == ColourModel.GRAY || model == ColourModel.YCBCR || model == ColourModel.RGB;
  }

  private static void requireColours(JpegStructure structure) throws JpegFault {
    if (!canShow(structure)) {
      throw JpegFault.unsuited(
          "the picture's colours are "
              + structure.colourModel().words()
              + ", gray, YCbCr or RGB can be shown",
          "export the photo again as an ordinary colour JPEG");
    }
  }

  private static int scaled(int samples, int eighths) {
    return (samples * eighths + 7) / 8;
  }

  private Raster raster() {
    int[] rgb = new int[Math.multiplyExact(width, height)];
    boolean direct = structure.colourModel() == ColourModel.RGB;
    byte[][] rows = new byte[planes.size()][width];
    for (int y = 0; y < height; y++) {
      for (int i = 0; i < rows.length; i++) {
        planes.get(i).row(y, rows[i]);
      }
      if (rows.length == 1) {
        gray(rows[0], rgb, y * width);
      } else if (direct) {
        direct(rows[0], rows[1], rows[2], rgb, y * width);
      } else {
        colours(rows[0], rows[1], rows[2], rgb, y * width);
      }
    }
    return Raster.owning(width, height, rgb);
  }

  private static void gray(byte[] bright, int[] rgb, int to) {
    for (int x = 0; x < bright.length; x++) {
      rgb[to + x] = (bright[x] & 0xFF) * 0x010101;
    }
  }

  private static void direct(byte[] red, byte[] green, byte[] blue, int[] rgb, int to) {
    for (int x = 0; x < red.length; x++) {
      rgb[to + x] = (red[x] & 0xFF) << 16 | (green[x] & 0xFF) << 8 | (blue[x] & 0xFF);
    }
  }

  private static void colours(byte[] bright, byte[] blue, byte[] red, int[] rgb, int to) {
    for (int x = 0; x < bright.length; x++) {
      rgb[to + x] = colour(bright[x] & 0xFF, blue[x] & 0xFF, red[x] & 0xFF);
    }
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
}
