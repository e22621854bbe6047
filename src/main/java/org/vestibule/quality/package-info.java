/**
 * What the picture itself says about how well it was taken: zoom, exposure, glare, sharpness,
 * colour, size. It advises and never discards: no finding is a reason to withhold a photograph.
 *
 * <p>Everything is measured on the small preview that is made from the coefficients anyway, and on
 * what the camera wrote. {@link org.vestibule.quality.QualityAdvice} is the door; what can't be
 * measured honestly is said as {@link org.vestibule.quality.Unmeasured}, with the reason.
 */
@NullMarked
package org.vestibule.quality;

import org.jspecify.annotations.NullMarked;
