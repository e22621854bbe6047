package org.vestibule.store.ledger;

import java.time.Instant;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * What a patient agreed to for one purpose, or took back.
 *
 * @param given false if this row takes back what was given before
 * @param on the day it was given, or taken back
 * @param expires last day on which it holds; null if it has none
 * @param face true if pictures that show the face may be used
 * @param form the version of the form that was signed
 * @param guardian who signed for the patient; empty if the patient did
 * @param ofAgeOn the day from which the patient has to be asked again; null if nobody signed for
 *     them
 * @param who recorded it
 */
public record ConsentRow(
    String issuer,
    String patientId,
    String purpose,
    boolean given,
    LocalDate on,
    @Nullable LocalDate expires,
    boolean face,
    String form,
    String guardian,
    @Nullable LocalDate ofAgeOn,
    String who,
    Instant at) {}
