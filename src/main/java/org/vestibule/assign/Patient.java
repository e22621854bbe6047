package org.vestibule.assign;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A patient, as the practice's own list has them.
 *
 * @param id the practice's number for the patient
 * @param issuer who issues such numbers; empty if not said
 * @param name in DICOM's form, Family^Given (PS3.5 6.2, PN)
 * @param birthDate if known
 * @param sex if known
 */
public record Patient(
    String id, String issuer, String name, @Nullable LocalDate birthDate, Sex sex) {}
