package org.vestibule.store.ledger;

import org.jspecify.annotations.Nullable;

/**
 * A visit as the practice's lists name it.
 *
 * @param starts local date and time, ISO 8601
 * @param ends local date and time, ISO 8601
 * @param zone time zone id
 * @param details JSON text of whatever else is known, or empty
 */
public record VisitRow(
    String key,
    String issuer,
    String patientId,
    String starts,
    String ends,
    String zone,
    @Nullable String accession,
    @Nullable String referrer,
    @Nullable String dentist,
    String details) {}
