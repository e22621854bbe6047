package org.vestibule.assign;

import java.util.Map;

/**
 * A visit as a person types it; empty where nothing is said.
 *
 * @param visit key of its own
 * @param patientId the practice's number for the patient
 * @param issuer of the number
 * @param name Family, Given
 * @param birthDate such as 1988-04-02
 * @param sex f, m or o
 * @param start such as 2026-03-11 09:00
 * @param end a moment, or a time on the same day
 * @param accessionNumber of the order
 * @param referrer who referred the patient
 * @param dentist who treats
 * @param studyUid given by a worklist
 */
public record VisitWords(
    String visit,
    String patientId,
    String issuer,
    String name,
    String birthDate,
    String sex,
    String start,
    String end,
    String accessionNumber,
    String referrer,
    String dentist,
    String studyUid) {

  /** By column, those that say something. */
  Map<String, String> byColumn() {
    return Map.ofEntries(
        Map.entry("visit", visit.strip()),
        Map.entry("patient id", patientId.strip()),
        Map.entry("issuer", issuer.strip()),
        Map.entry("name", name.strip()),
        Map.entry("birth date", birthDate.strip()),
        Map.entry("sex", sex.strip()),
        Map.entry("start", start.strip()),
        Map.entry("end", end.strip()),
        Map.entry("accession number", accessionNumber.strip()),
        Map.entry("referrer", referrer.strip()),
        Map.entry("dentist", dentist.strip()),
        Map.entry("study uid", studyUid.strip()));
  }
}
