/** Audit messages (DICOM PS3.15 A.5): to a file of the home folder, and from there by syslog. */
@NullMarked
package org.vestibule.audit;

import org.jspecify.annotations.NullMarked;
