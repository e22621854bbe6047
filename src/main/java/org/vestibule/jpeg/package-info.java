/**
 * JPEG files (ITU-T T.81): segments, metadata stripping, lossless coefficient transcoding, previews
 * from coefficients.
 */
@NullMarked
package org.vestibule.jpeg;

import org.jspecify.annotations.NullMarked;
