package org.vestibule.samples;

import java.awt.image.BufferedImage;

/**
 * A landscape of heights and colours that is lit into a picture. Places and heights are in
 * millimetres; x runs right, y down, height towards the viewer.
 */
final class Relief {

  /** What a surface says of one place. */
  static final class Spot {
    double cover;
    double height;
    double red;
    double green;
    double blue;
    double gloss;

    void colour(int rgb) {
      red = rgb >> 16 & 0xff;
      green = rgb >> 8 & 0xff;
      blue = rgb & 0xff;
    }

    /** Moves the colour towards another one. */
    void tint(int rgb, double part) {
      double bounded = Math.max(0, Math.min(1, part));
      red = Noise.mix(red, rgb >> 16 & 0xff, bounded);
      green = Noise.mix(green, rgb >> 8 & 0xff, bounded);
      blue = Noise.mix(blue, rgb & 0xff, bounded);
    }
  }

  /** Something that covers places. */
  interface Surface {
    void at(double x, double y, Spot spot);
  }

  private final int width;
  private final int height;
  private final double pixelsPerMm;
  private final double left;
  private final double top;
  private final float[] heights;
  private final float[][] colours;
  private final float[] gloss;

  Relief(int width, int height, double pixelsPerMm, double left, double top) {
    this.width = width;
    this.height = height;
    this.pixelsPerMm = pixelsPerMm;
    this.left = left;
    this.top = top;
    heights = new float[width * height];
    colours = new float[3][width * height];
    gloss = new float[width * height];
  }

  /** How many millimetres one sample is wide. */
  double sampleMm() {
    return 1 / pixelsPerMm;
  }

  /** Lays a surface over everything there is within a circle. */
  void lay(double x, double y, double radius, Surface surface) {
    lay(x - radius, y - radius, x + radius, y + radius, surface);
  }

  /** Lays a surface over the whole picture. */
  void layAll(Surface surface) {
    lay(left, top, left + width / pixelsPerMm, top + height / pixelsPerMm, surface);
  }

  private void lay(double x0, double y0, double x1, double y1, Surface surface) {
    int firstColumn = Math.max(0, (int) ((x0 - left) * pixelsPerMm));
    int lastColumn = Math.min(width, (int) ((x1 - left) * pixelsPerMm) + 1);
    int firstRow = Math.max(0, (int) ((y0 - top) * pixelsPerMm));
    int lastRow = Math.min(height, (int) ((y1 - top) * pixelsPerMm) + 1);
    Spot spot = new Spot();
    for (int row = firstRow; row < lastRow; row++) {
      for (int column = firstColumn; column < lastColumn; column++) {
        spot.cover = 0;
        surface.at((column + 0.5) / pixelsPerMm + left, (row + 0.5) / pixelsPerMm + top, spot);
        if (spot.cover > 0) {
          blend(row * width + column, spot);
        }
      }
    }
  }

  private void blend(int index, Spot spot) {
    float cover = (float) Math.min(1, spot.cover);
    heights[index] += ((float) spot.height - heights[index]) * cover;
    colours[0][index] += ((float) spot.red - colours[0][index]) * cover;
    colours[1][index] += ((float) spot.green - colours[1][index]) * cover;
    colours[2][index] += ((float) spot.blue - colours[2][index]) * cover;
    gloss[index] += ((float) spot.gloss - gloss[index]) * cover;
  }

  /** The picture under a lamp near the camera, a little left and above. */
  BufferedImage lit() {
    float[] around =
        Blur.box(
            Blur.box(heights, width, height, (int) (pixelsPerMm * 0.9)),
            width,
            height,
            (int) (pixelsPerMm * 0.9));
    BufferedImage picture = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    int[] row = new int[width];
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        row[x] = lit(x, y, around[y * width + x]);
      }
      picture.setRGB(0, y, width, 1, row, 0, width);
    }
    return picture;
  }

  private int lit(int x, int y, float around) {
    int index = y * width + x;
    double slopeX =
        (heights[y * width + Math.min(width - 1, x + 1)] - heights[y * width + Math.max(0, x - 1)])
            * pixelsPerMm
            / 2;
    double slopeY =
        (heights[Math.min(height - 1, y + 1) * width + x] - heights[Math.max(0, y - 1) * width + x])
            * pixelsPerMm
            / 2;
    double length = Math.sqrt(1 + slopeX * slopeX + slopeY * slopeY);
    double facing = 1 / length;
    double key = Math.max(0, (0.36 * slopeX + 0.48 * slopeY + 0.8) / length);
    double half = Math.max(0, (0.19 * slopeX + 0.25 * slopeY + 0.95) / length);
    double hidden = Math.max(0.4, Math.min(1.12, 1 + 0.22 * (heights[index] - around)));
    double light = (0.3 + 0.36 * facing + 0.5 * key) * hidden;
    double shine = half < 0.93 ? 0 : gloss[index] * 235 * Math.pow(half, 90) * hidden;
    double vignette = vignette(x, y);
    return channel(colours[0][index] * light + shine, vignette) << 16
        | channel(colours[1][index] * light + shine, vignette) << 8
        | channel(colours[2][index] * light + shine, vignette);
  }

  private double vignette(int x, int y) {
    double dx = (x - width / 2.0) / width;
    double dy = (y - height / 2.0) / height;
    return 1.06 - 0.75 * (dx * dx + dy * dy);
  }

  private static int channel(double value, double vignette) {
    double bright = value * vignette;
    // Highlights roll off softly, as in a photograph.
    double soft = bright <= 200 ? bright : 200 + 55 * (1 - Math.exp(-(bright - 200) / 55));
    return (int) Math.max(0, Math.min(255, Math.round(soft)));
  }
}
