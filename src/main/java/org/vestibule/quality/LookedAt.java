package org.vestibule.quality;

import org.vestibule.intake.CaptureFacts;
import org.vestibule.jpeg.FrameSize;
import org.vestibule.jpeg.PictureFacts;
import org.vestibule.jpeg.Raster;

/**
 * A photograph as quality is judged.
 *
 * @param facts what the camera wrote
 * @param frame the camera's frame before any crop
 * @param preview the whole frame small, its longer side {@link QualityAdvice#PREVIEW_SIDE} if the
 *     frame is as large
 * @param picture what the coefficients say
 * @param subject what it shows
 */
public record LookedAt(
    CaptureFacts facts, FrameSize frame, Raster preview, PictureFacts picture, Subject subject) {}
