package org.vestibule.store.ledger;

import java.time.LocalDate;

/**
 * A visit card that was drawn, with what the visit list said then.
 *
 * @param token in the card's code
 * @param visit key of the visit
 * @param issuer who issued the patient's number; maybe empty
 * @param patientId the patient's number
 * @param day of the visit
 */
public record VisitCardRow(
    String token, String visit, String issuer, String patientId, LocalDate day) {}
