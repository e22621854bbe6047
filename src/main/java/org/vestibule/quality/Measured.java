package org.vestibule.quality;

import org.jspecify.annotations.Nullable;
import org.vestibule.jpeg.FrameSize;
import org.vestibule.jpeg.PictureFacts;
import org.vestibule.jpeg.Raster;

/**
 * What was measured of a photograph, as numbers that can be kept in place of its picture.
 *
 * @param frame the camera's frame before any crop
 * @param sharpness how sharp it is
 * @param toothShare share of the picture that is tooth-coloured, 0 to 1
 * @param burntOutShare share of the tooth-coloured pixels that are burnt out, 0 to 1
 * @param reflectedShare share of the picture that reflections cover, 0 to 1
 * @param row how the row of teeth lies; null if nothing is tooth-coloured
 */
public record Measured(
    FrameSize frame,
    Sharpness sharpness,
    double toothShare,
    double burntOutShare,
    double reflectedShare,
    @Nullable ToothRow row) {

  /**
   * Measures a photograph.
   *
   * @param preview the whole frame small, its longer side {@link QualityAdvice#PREVIEW_SIDE} if the
   *     frame is as large
   * @param picture what the coefficients say
   */
  public static Measured of(Raster preview, PictureFacts picture, FrameSize frame) {
    BrightSpots spots = BrightSpots.in(preview);
    return new Measured(
        frame,
        Sharpness.of(preview, picture, frame),
        spots.toothShare(),
        spots.burntOutShare(),
        spots.reflectedShare(),
        spots.row());
  }
}
