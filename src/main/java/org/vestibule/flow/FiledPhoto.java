package org.vestibule.flow;

import java.util.ArrayList;
import java.util.List;
import org.vestibule.assign.Decision;
import org.vestibule.assign.Visit;
import org.vestibule.quality.QualityFinding;

/**
 * A photograph that was filed just now.
 *
 * @param id what people call it by
 * @param decision what the ledger calls the decision by which it is filed; empty if it is not yet
 * @param name the file's name
 * @param patient the patient in words
 * @param visit the visit's key and day
 * @param view name of the view
 * @param teeth the named teeth in words; empty if none
 * @param remarks how it was laid, cropped or trimmed, and warnings, in words
 * @param advice what could be better about the picture
 */
public record FiledPhoto(
    String id,
    String decision,
    String name,
    String patient,
    String visit,
    String view,
    String teeth,
    List<String> remarks,
    List<Advice> advice) {

  private static final String WARNING = "warning: ";

  public FiledPhoto {
    remarks = List.copyOf(remarks);
    advice = List.copyOf(advice);
  }

  /** What was decided, and how the picture was laid by it. */
  static FiledPhoto of(String id, String name, Decision decision, List<String> laid) {
    Visit visit = decision.visit();
    List<String> remarks = new ArrayList<>(laid);
    decision.facts().stream().filter(fact -> fact.startsWith(WARNING)).forEach(remarks::add);
    return new FiledPhoto(
        id,
        "",
        name,
        Descriptions.name(visit.patient().name()),
        visit.key() + " of " + visit.start().toLocalDate(),
        decision.view().name(),
        decision.teeth().isEmpty() ? "" : decision.teeth().words(),
        remarks,
        List.of());
  }

  /** The same with what could be better about its picture. */
  FiledPhoto with(List<QualityFinding> findings) {
    return new FiledPhoto(
        id,
        decision,
        name,
        patient,
        visit,
        view,
        teeth,
        remarks,
        findings.stream().map(Advice::of).toList());
  }

  /** The same as it is filed by this decision. */
  FiledPhoto filedBy(String decisionId) {
    return new FiledPhoto(id, decisionId, name, patient, visit, view, teeth, remarks, advice);
  }
}
