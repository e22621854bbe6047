package org.vestibule.simulator;

import java.time.LocalDateTime;
import org.jspecify.annotations.Nullable;

/** What really happened in a chair: one patient, one run of photographs. */
final class Sitting {

  final SimulatedVisit visit;
  SimulatedPatient patient;
  Phone phone;

  /** When the first photograph is taken, on the site's true clock. */
  LocalDateTime begins;

  /** False for a patient whose visit no list will ever have: there is no card for it. */
  boolean known = true;

  /** What the card that lies ready says; null if there is none. */
  @Nullable String token;

  Sitting(SimulatedVisit visit, Phone phone, LocalDateTime begins) {
    this.visit = visit;
    this.patient = visit.patient();
    this.phone = phone;
    this.begins = begins;
    this.token = visit.token();
  }

  @Nullable String visitKey() {
    return known ? visit.key() : null;
  }
}
