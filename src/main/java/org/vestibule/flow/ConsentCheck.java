package org.vestibule.flow;

import java.time.LocalDate;
import java.util.Optional;
import org.vestibule.base.Outcome;
import org.vestibule.release.Purpose;
import org.vestibule.store.ledger.ConsentRow;

/** Whether a photograph may go to a purpose, by what its patient agreed to. */
final class ConsentCheck {

  private static final String ASK =
      "ask the patient, and record it with \"vestibule consent add\"; your local law says what a"
          + " consent has to look like";

  private final Purpose purpose;
  private final LocalDate day;

  ConsentCheck(Purpose purpose, LocalDate day) {
    this.purpose = purpose;
    this.day = day;
  }

  /**
   * Done if the photograph may go.
   *
   * @param consent what holds for its patient and this purpose
   * @param id the photograph's
   * @param showsFace whether the face may be recognised in it
   */
  Outcome<String> allows(Optional<ConsentRow> consent, String id, boolean showsFace) {
    boolean faceAsked = showsFace && purpose.face() == Purpose.Faces.WITH_CONSENT;
    if (!purpose.needsConsent() && !faceAsked) {
      return Outcome.done(id);
    }
    String whose = "the patient of photograph " + id;
    if (consent.isEmpty()) {
      return Outcome.refused(whose + " gave no consent to: " + purpose.name(), ASK);
    }
    ConsentRow row = consent.get();
    if (!row.given()) {
      return Outcome.refused(
          whose + " took the consent back on " + row.on() + " (" + purpose.name() + ")",
          "leave the photograph out");
    }
    if (row.on().isAfter(day)) {
      return Outcome.refused(
          "the consent of " + whose + " is dated " + row.on() + ", after today", "check the day");
    }
    LocalDate expires = row.expires();
    if (expires != null && expires.isBefore(day)) {
      return Outcome.refused("the consent of " + whose + " ended on " + expires, ASK);
    }
    LocalDate ofAgeOn = row.ofAgeOn();
    if (ofAgeOn != null && !day.isBefore(ofAgeOn)) {
      return Outcome.refused(
          "a guardian gave the consent, and " + whose + " is of age since " + ofAgeOn, ASK);
    }
    if (faceAsked && !row.face()) {
      return Outcome.refused(
          "photograph " + id + " may show the face, and the consent does not cover the face",
          "leave it out, name the part without the face with --crop, or ask the patient for a consent"
              + " that does");
    }
    return Outcome.done(id);
  }
}
