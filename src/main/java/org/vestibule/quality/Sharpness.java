package org.vestibule.quality;

import org.vestibule.jpeg.FrameSize;
import org.vestibule.jpeg.PictureFacts;
import org.vestibule.jpeg.Raster;

/**
 * How sharp a picture is, coarsely and finely. The numbers mean nothing by themselves; they are
 * compared within a series, at one scale.
 *
 * @param variance variance of the Laplacian of the preview's brightness over all inner pixels, in
 *     squared steps of 255 (Pertuz, Puig and Garcia, Pattern Recognition 46 (2013) 1415-1432; from
 *     memory)
 * @param fine {@link PictureFacts#focus()} of the whole picture: what is too fine for the preview
 * @param previewSide longer side in pixels of the preview
 * @param frameSide longer side in samples of the frame
 */
public record Sharpness(double variance, double fine, int previewSide, int frameSide) {

  private static final double THOUSAND = 1000;

  /** What a photograph shows. */
  public static Sharpness of(Raster preview, PictureFacts facts, FrameSize frame) {
    return new Sharpness(
        variance(preview),
        facts.focus(),
        Math.max(preview.width(), preview.height()),
        Math.max(frame.width(), frame.height()));
  }

  /** True if both were measured at the same scale, so that their numbers can be compared. */
  boolean comparable(Sharpness other) {
    return previewSide == other.previewSide && frameSide == other.frameSide;
  }

  private static double variance(Raster preview) {
    int width = preview.width();
    int height = preview.height();
    int[] rgb = preview.rgb();
    int[] bright = new int[rgb.length];
    for (int i = 0; i < rgb.length; i++) {
      bright[i] = 299 * (rgb[i] >> 16 & 0xFF) + 587 * (rgb[i] >> 8 & 0xFF) + 114 * (rgb[i] & 0xFF);
    }
    double sum = 0;
    double squares = 0;
    for (int y = 1; y < height - 1; y++) {
      long sumOfRow = 0;
      long squaresOfRow = 0;
      for (int i = y * width + 1; i < (y + 1) * width - 1; i++) {
        int laplacian =
            bright[i - 1] + bright[i + 1] + bright[i - width] + bright[i + width] - 4 * bright[i];
        sumOfRow += laplacian;
        squaresOfRow += (long) laplacian * laplacian;
      }
      sum += sumOfRow;
      squares += squaresOfRow;
    }
    double count = Math.max(1.0, (width - 2.0) * (height - 2.0));
    double mean = sum / count;
    return Math.max(0, squares / count - mean * mean) / (THOUSAND * THOUSAND);
  }
}
