package org.vestibule.flow;

import java.io.IOException;
import java.util.List;
import org.vestibule.assign.Decision;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.dental.Capture;
import org.vestibule.dental.Laid;
import org.vestibule.dental.OrientationRule;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.store.ledger.DecisionRow;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.Ledger;

/** Completes what an interrupted run intended, by the decision it had written down. */
final class Resumption {

  private final Practice practice;
  private final Ledger ledger;
  private final Filer filer;

  Resumption(Practice practice, Filer filer) {
    this.practice = practice;
    this.ledger = practice.store().ledger();
    this.filer = filer;
  }

  Outcome<FiledPhoto> complete(Picture picture) throws IOException {
    List<Intent> intents = ledger.intents().unfinished(picture.hash());
    if (intents.isEmpty()) {
      return Outcome.refused(
          "an interrupted run began this photograph and left no intent", "run verify");
    }
    Outcome<Decision> read = decision(intents.get(0).decisionId());
    if (!(read instanceof Done<Decision> decision)) {
      return ((Refused<Decision>) read).as();
    }
    Outcome<Laid> laid = lay(decision.value(), picture.facts());
    if (laid instanceof Done<Laid> done) {
      return filer.complete(picture, decision.value(), done.value(), intents);
    }
    Refused<Laid> refused = (Refused<Laid>) laid;
    ledger.intents().abandon(picture.hash(), decision.value().decidedBy(), refused.reason());
    return refused.as();
  }

  /** A decision as it was written down. */
  Outcome<Decision> decision(String id) {
    DecisionRow row = ledger.decisions().find(id).orElseThrow();
    return DecisionJson.read(row.json()).toDecision(practice.views());
  }

  /** The turn that follows from a decision and what the camera wrote. */
  Outcome<Laid> lay(Decision decision, CaptureFacts facts) {
    Capture capture =
        new Capture(
            decision.mirror(),
            decision.incisors(),
            facts.orientation(),
            facts.frontLens(),
            facts.edited(),
            decision.up(),
            decision.seen());
    return OrientationRule.lay(decision.view(), practice.settings().lowerArch(), capture);
  }
}
