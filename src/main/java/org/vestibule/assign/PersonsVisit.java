package org.vestibule.assign;

import java.util.List;
import java.util.Optional;
import org.vestibule.base.Outcome;

/** The visit that a person names for a photograph before them; their word beats the clock. */
final class PersonsVisit {

  private final VisitList list;
  private final PersonWords words;
  private final PhotoTime time;

  PersonsVisit(VisitList list, PersonWords words, PhotoTime time) {
    this.list = list;
    this.words = words;
    this.time = time;
  }

  Outcome<VisitFinding> find() {
    if (words.says(PhotoFact.VISIT)) {
      return named();
    }
    if (!words.says(PhotoFact.PATIENT)) {
      return Outcome.refused(
          "nobody said whose photograph it is", "name the visit by its key; visits add enters one");
    }
    Optional<Disputed> dispute = list.disputeOfPatient(words.get(PhotoFact.PATIENT));
    if (dispute.isPresent()) {
      return Outcome.refused(dispute.get().sentence(), dispute.get().advice());
    }
    List<Visit> visits = list.ofPatient(words.get(PhotoFact.PATIENT));
    if (visits.isEmpty()) {
      return Outcome.refused(
          "no patient in the visit list has this number",
          "check the number, leading zeros included, or enter the visit with visits add");
    }
    if (!VisitsTogether.onePatient(visits)) {
      return Outcome.refused(
          "two issuers gave this number to different patients", "name the visit by its key");
    }
    List<Visit> holding = time.isFact() ? visits.stream().filter(time::within).toList() : List.of();
    if (holding.size() != 1) {
      return Outcome.refused(
          "the patient's number does not tell which visit: "
              + (!time.isFact()
                  ? time.clock().words()
                  : holding.isEmpty()
                      ? "the photograph's time lies in none of that patient's visits"
                      : "the photograph's time lies in several of that patient's visits"),
          "name the visit by its key");
    }
    return done(holding.get(0));
  }

  private Outcome<VisitFinding> named() {
    Optional<Disputed> dispute = list.dispute(words.get(PhotoFact.VISIT));
    if (dispute.isPresent()) {
      return Outcome.refused(dispute.get().sentence(), dispute.get().advice());
    }
    Visit visit = list.byKey(words.get(PhotoFact.VISIT)).orElse(null);
    if (visit == null) {
      return Outcome.refused(
          "no visit of this key is in the visit list",
          "check the key, or enter the visit with visits add");
    }
    if (words.says(PhotoFact.PATIENT)
        && !visit.patient().id().equalsIgnoreCase(words.get(PhotoFact.PATIENT))) {
      return Outcome.refused(
          "the visit is not one of the patient of this number", "leave out the one that is wrong");
    }
    return done(visit);
  }

  private Outcome<VisitFinding> done(Visit visit) {
    VisitFinding finding = new VisitFinding();
    finding.known(visit, "a person named whose it is");
    if (time.missing()) {
      finding.fact("the photograph has no time to compare with the visit");
    } else if (time.impossible()) {
      finding.fact("warning: " + time.clock().words());
    } else if (!time.within(visit)) {
      finding.fact(
          "warning: the photograph's time lies outside the visit; the person's word was followed");
    } else {
      finding.fact("taken during the visit");
    }
    return Outcome.done(finding);
  }
}
