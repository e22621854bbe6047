package org.vestibule.assign;

import java.time.LocalDate;

/**
 * A visit card that was drawn, with what the visit list said then. A list that says otherwise today
 * makes the card worthless: it may be another person's by now.
 *
 * @param token the card's
 * @param visit key of the visit
 * @param issuer who issued the patient's number; maybe empty
 * @param patientId the patient's number
 * @param day of the visit
 */
public record IssuedCard(
    String token, String visit, String issuer, String patientId, LocalDate day) {

  /** The card that is drawn for a visit. */
  public static IssuedCard of(String token, Visit visit) {
    return new IssuedCard(
        token,
        visit.key(),
        visit.patient().issuer(),
        visit.patient().id(),
        visit.start().toLocalDate());
  }

  /** True if the list says of the visit what it said when the card was drawn. */
  boolean stillFits(Visit visit) {
    return visit.patient().id().equalsIgnoreCase(patientId)
        && visit.patient().issuer().equalsIgnoreCase(issuer)
        && visit.start().toLocalDate().equals(day);
  }
}
