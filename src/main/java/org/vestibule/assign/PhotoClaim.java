package org.vestibule.assign;

/**
 * What a row or a name says about whose photograph one is.
 *
 * @param visit a visit's key; empty if none is named
 * @param patient a patient's number; empty if none is named
 */
record PhotoClaim(String visit, String patient) {

  boolean contradicts(Visit other) {
    return (!visit.isEmpty() && !other.key().equalsIgnoreCase(visit))
        || (!patient.isEmpty() && !other.patient().id().equalsIgnoreCase(patient));
  }
}
