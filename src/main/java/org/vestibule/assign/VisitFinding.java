package org.vestibule.assign;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What was found about whose photograph it is: a visit that is known or likely, and why. */
final class VisitFinding {

  private @Nullable Visit visit;
  private @Nullable String patientId;
  private boolean known;
  private final List<String> facts = new ArrayList<>();
  private final List<WaitReason> reasons = new ArrayList<>();

  /** The visit is known, unless a reason is added. */
  void known(Visit found, String fact) {
    propose(found);
    known = true;
    facts.add(fact);
  }

  void propose(Visit found) {
    visit = found;
    patientId = found.patient().id();
  }

  void proposePatient(Patient patient) {
    patientId = patient.id();
  }

  void fact(String fact) {
    facts.add(fact);
  }

  void waits(WaitReason.Kind kind, String sentence, String advice) {
    reasons.add(new WaitReason(kind, sentence, advice));
  }

  void waits(List<WaitReason> more) {
    reasons.addAll(more);
  }

  /** The visit if it is known and nothing speaks against it. */
  Optional<Visit> decided() {
    return known && reasons.isEmpty() ? Optional.ofNullable(visit) : Optional.empty();
  }

  /** The visit that is known or likely. */
  @Nullable Visit visit() {
    return visit;
  }

  @Nullable String patientId() {
    return patientId;
  }

  List<String> facts() {
    return List.copyOf(facts);
  }

  List<WaitReason> reasons() {
    return List.copyOf(reasons);
  }
}
