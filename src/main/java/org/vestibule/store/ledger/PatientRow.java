package org.vestibule.store.ledger;

import org.jspecify.annotations.Nullable;

/**
 * A patient as the practice's lists name them.
 *
 * @param name as DICOM PN text
 * @param birthDate ISO 8601
 * @param details JSON text of whatever else is known, or empty
 */
public record PatientRow(
    String issuer,
    String id,
    String name,
    @Nullable String birthDate,
    @Nullable String sex,
    String details) {}
