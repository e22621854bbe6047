/** A photograph and a decision become the finished DICOM object with a bit-exact picture. */
@NullMarked
package org.vestibule.encode;

import org.jspecify.annotations.NullMarked;
