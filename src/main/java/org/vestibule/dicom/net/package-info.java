/**
 * Associations with an imaging archive or a worklist, and the services used over them (PS3.7,
 * PS3.8, PS3.4).
 *
 * <p>{@link org.vestibule.dicom.net.Association} calls; {@link
 * org.vestibule.dicom.net.ReportListener} is called, for storage commitment reports and echoes
 * alone. Every wait has an end, and nothing is kept in memory whose size the other side decides.
 * What the other side does wrong is an outcome with words, never an exception.
 */
@NullMarked
package org.vestibule.dicom.net;

import org.jspecify.annotations.NullMarked;
