package org.vestibule.encode;

import org.vestibule.assign.Crop;
import org.vestibule.base.Turn;
import org.vestibule.jpeg.CropBox;
import org.vestibule.jpeg.FrameSize;

/** Where a crop lies: from fractions of the picture on the sheet to samples of the shown one. */
final class CropPlace {

  private CropPlace() {}

  /**
   * The crop in samples of the turned picture, widened to whole samples.
   *
   * @param crop fractions of the picture as the sheet shows it
   * @param sheet the turn from the stored picture to the one on the sheet (Exif's)
   * @param shown the turn from the stored picture to the one that is filed
   * @param stored size of the stored picture
   */
  static CropBox box(Crop crop, Turn sheet, Turn shown, FrameSize stored) {
    Turn further = sheet.inverse().then(shown);
    double left = crop.left();
    double top = crop.top();
    double right = crop.right();
    double bottom = crop.bottom();
    if (further.swapsAxes()) {
      left = crop.top();
      top = crop.left();
      right = crop.bottom();
      bottom = crop.right();
    }
    if (further.flipsHorizontally()) {
      double mirrored = 1 - right;
      right = 1 - left;
      left = mirrored;
    }
    if (further.flipsVertically()) {
      double mirrored = 1 - bottom;
      bottom = 1 - top;
      top = mirrored;
    }
    int width = shown.swapsAxes() ? stored.height() : stored.width();
    int height = shown.swapsAxes() ? stored.width() : stored.height();
    int x0 = start(left, width);
    int y0 = start(top, height);
    return new CropBox(x0, y0, end(right, width) - x0, end(bottom, height) - y0);
  }

  /** Such as {@code 1200 x 800 samples from column 64, row 128}. */
  static String words(CropBox box) {
    return box.width()
        + " x "
        + box.height()
        + " samples from column "
        + box.left()
        + ", row "
        + box.top();
  }

  private static int start(double fraction, int samples) {
    return Math.min(samples - 1, (int) Math.floor(fraction * samples + TOLERANCE));
  }

  private static int end(double fraction, int samples) {
    return Math.max(1, Math.min(samples, (int) Math.ceil(fraction * samples - TOLERANCE)));
  }

  /** Rounding of fractions such as 1 - 0.9 must not widen a crop by a sample. */
  private static final double TOLERANCE = 1e-6;
}
