package org.vestibule.assign;

import java.util.Optional;

/**
 * A visit of the list that says something else than the record: nothing is filed under it before a
 * person has settled which is right.
 *
 * @param visit as the list has it
 * @param ofPatient true if the patient's own details differ, false if the visit's key was another
 *     patient's
 * @param sentence what differs, without patient data
 * @param advice what to do
 */
public record Disputed(Visit visit, boolean ofPatient, String sentence, String advice) {

  static Disputed patient(Visit visit, String column) {
    return new Disputed(
        visit,
        true,
        "the visit list gives this patient's number another " + column + " than the record",
        "find out whose number it is and correct the list; if the patient's details did change, say"
            + " so with visits confirm");
  }

  static Disputed key(Visit visit) {
    return new Disputed(
        visit,
        false,
        "the visit list gives another patient the key of a visit that is on record",
        "give the visit a key of its own");
  }

  /** What the record has against a visit of the list, if anything. */
  static Optional<Disputed> of(Visit listed, Iterable<Visit> recorded) {
    for (Visit known : recorded) {
      Optional<String> column = known.patient().contradiction(listed.patient());
      if (column.isPresent()) {
        return Optional.of(patient(listed, column.get()));
      }
      if (known.key().equalsIgnoreCase(listed.key())
          && !VisitsTogether.sameNumber(known.patient(), listed.patient())) {
        return Optional.of(key(listed));
      }
    }
    return Optional.empty();
  }
}
