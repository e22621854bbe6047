package org.vestibule.flow;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.vestibule.assign.Decision;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.store.ledger.CorrectionRow;
import org.vestibule.store.ledger.DecisionRow;
import org.vestibule.store.ledger.Ledger;

/** Who decided what about a photograph, when, and on what it rested. */
public final class PhotoHistory {

  /**
   * One step.
   *
   * @param at when
   * @param who the person's name, or the job's
   * @param what was done, in words
   * @param because what it rested on; maybe empty
   */
  public record Step(Instant at, String who, String what, List<String> because) {
    public Step {
      because = List.copyOf(because);
    }
  }

  private final Practice practice;
  private final Ledger ledger;

  public PhotoHistory(Practice practice) {
    this.practice = practice;
    this.ledger = practice.store().ledger();
  }

  /** All steps, the first one first; none for a photograph that only waits. */
  public Outcome<List<Step>> of(String id) {
    return practice.store().ids().find(id).map(photo -> steps(photo.hash()));
  }

  private List<Step> steps(ContentHash hash) {
    List<Step> steps = new ArrayList<>();
    ledger.decisions().of(hash).forEach(row -> steps.add(decided(row)));
    ledger.corrections().of(hash).stream()
        .filter(row -> row.newRevision() == null)
        .forEach(row -> steps.add(rejected(row)));
    steps.addAll(GreyCards.steps(hash, ledger));
    steps.sort(Comparator.comparing(Step::at));
    return List.copyOf(steps);
  }

  private Step decided(DecisionRow row) {
    String how =
        row.why().isEmpty()
            ? row.source().equals("person") ? "filed by hand" : "filed by " + row.source()
            : "corrected (" + row.why() + ")";
    if (!(DecisionJson.read(row.json()).toDecision(practice.views())
        instanceof Done<Decision> done)) {
      return new Step(row.decidedAt(), row.decidedBy(), how, List.of());
    }
    Decision decision = done.value();
    String what =
        how
            + ": "
            + Descriptions.name(decision.visit().patient().name())
            + ", visit "
            + decision.visit().key()
            + ", "
            + decision.view().name()
            + (decision.teeth().isEmpty() ? "" : ", " + decision.teeth().words());
    return new Step(row.decidedAt(), row.decidedBy(), what, decision.facts());
  }

  private static Step rejected(CorrectionRow row) {
    return new Step(row.at(), row.who(), "rejected (" + row.why() + ")", List.of());
  }
}
