/**
 * Draws the invented practice of {@code samples/}: mouths that never were, written to files as
 * telephones write them. Test code; its JPEG and Exif writer shares nothing with the product.
 */
@NullMarked
package org.vestibule.samples;

import org.jspecify.annotations.NullMarked;
