/**
 * The finished DICOM objects, each written once and never changed.
 *
 * <p>Layout below the objects folder: {@code <xx>/<SOP Instance UID>.dcm}, where {@code xx} is the
 * first byte, in hexadecimal, of the SHA-256 of the UID's ASCII characters. A file whose name ends
 * in {@code .part} is a write that was interrupted; nothing in it is needed.
 */
@NullMarked
package org.vestibule.store.objects;

import org.jspecify.annotations.NullMarked;
