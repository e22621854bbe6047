package org.vestibule.flow;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.vestibule.assign.Decision;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.dental.Capture;
import org.vestibule.dental.Laid;
import org.vestibule.dental.LowerArchShown;
import org.vestibule.dental.OrientationRule;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.store.ledger.DecisionRow;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.Ledger;

/** Completes what an interrupted run intended, by the decision it had written down. */
final class Resumption {

  private static final String OTHER_RECIPE =
      "it was begun by a program that makes objects otherwise than this one";

  /** What is needed to go on. */
  record Begun(Picture picture, Decision decision, List<Intent> intents) {}

  private final Practice practice;
  private final Ledger ledger;
  private final Filer filer;

  Resumption(Practice practice, Filer filer) {
    this.practice = practice;
    this.ledger = practice.store().ledger();
    this.filer = filer;
  }

  /** Gathers what is needed; refused if it is not at hand now, so that the intent must stand. */
  Outcome<Begun> gather(ContentHash hash) throws IOException {
    List<Intent> intents = ledger.intents().unfinished(hash);
    if (intents.isEmpty()) {
      return Outcome.refused(
          "an interrupted run began this photograph and left no intent",
          "run verify; reject takes the photograph out");
    }
    Outcome<Decision> read = decision(intents.get(0).decisionId());
    if (!(read instanceof Done<Decision> decision)) {
      return ((Refused<Decision>) read).as();
    }
    CaptureFacts facts = new SourceFiles(practice).facts(hash);
    return new KeptPictures(practice)
        .best(hash, facts, ledger.intents().current(hash))
        .map(picture -> new Begun(picture, decision.value(), intents));
  }

  /**
   * Finishes what was begun, as it was begun: the settings of that time count, not today's. Only
   * where the program itself makes objects otherwise by now, the next revision is begun instead.
   */
  Outcome<FiledPhoto> complete(Begun begun) throws IOException {
    List<Intent> intents = begun.intents();
    Optional<Making> asBegun = Making.repeatable(intents.get(0).recipe());
    Making making = asBegun.orElseGet(() -> filer.making(begun.picture().hash()));
    if (asBegun.isEmpty()) {
      intents =
          new Intentions(practice)
              .anew(begun.picture(), begun.decision(), intents, making, OTHER_RECIPE);
    }
    Outcome<Laid> laid = lay(begun.decision(), begun.picture().facts(), making.lowerArch());
    return laid instanceof Done<Laid> done
        ? filer.complete(
            new Filer.Task(begun.picture(), begun.decision(), done.value(), making, intents, false))
        : ((Refused<Laid>) laid).as();
  }

  /** What was about to be filed, as a person would say it; empty if nothing was. */
  Map<String, String> said(ContentHash hash, CaptureFacts facts) {
    List<Intent> intents = ledger.intents().unfinished(hash);
    return !intents.isEmpty()
            && decision(intents.get(0).decisionId()) instanceof Done<Decision> begun
        ? ProposalWords.of(begun.value(), facts.orientation())
        : Map.of();
  }

  /** A decision as it was written down. */
  Outcome<Decision> decision(String id) {
    DecisionRow row = ledger.decisions().find(id).orElseThrow();
    return DecisionJson.read(row.json()).toDecision(practice.views());
  }

  /** The turn that follows from a decision and what the camera wrote. */
  private static Outcome<Laid> lay(
      Decision decision, CaptureFacts facts, LowerArchShown lowerArch) {
    Capture capture =
        new Capture(
            decision.mirror(),
            decision.incisors(),
            facts.orientation(),
            facts.frontLens(),
            facts.edited(),
            decision.up(),
            decision.seen());
    return OrientationRule.lay(decision.view(), lowerArch, capture);
  }
}
