/**
 * DICOM data sets, the data dictionary, Part 10 files and the JSON model (PS3.5, PS3.6, PS3.10,
 * PS3.18).
 */
@NullMarked
package org.vestibule.dicom;

import org.jspecify.annotations.NullMarked;
