package org.vestibule.flow;

import java.util.List;
import org.vestibule.assign.Decision;
import org.vestibule.assign.DecisionRecord;
import org.vestibule.assign.Visit;
import org.vestibule.encode.Role;
import org.vestibule.encode.SeriesWords;
import org.vestibule.store.ledger.DecisionRow;
import org.vestibule.store.ledger.Filing;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.Ledger;

/** Writes down what is about to be filed, before anything is made. */
final class Intentions {

  private final Practice practice;
  private final Ledger ledger;

  Intentions(Practice practice) {
    this.practice = practice;
    this.ledger = practice.store().ledger();
  }

  /** Patient, visit, decision and intents, in one transaction. */
  List<Intent> begin(Picture picture, Decision decision, Making making, String source, Why why) {
    return ledger.together(
        () -> {
          String who = decision.decidedBy();
          new PhotoMarks(practice).filedUnder(picture.hash(), decision.visit().key());
          ledger.visits().put(VisitBook.patientRow(decision.visit().patient()), who);
          ledger.visits().put(new VisitBook(practice).visitRow(decision.visit()), who);
          DecisionRow row =
              ledger
                  .decisions()
                  .add(
                      picture.hash(),
                      DecisionJson.write(DecisionRecord.of(decision)),
                      who,
                      source,
                      why.words(),
                      why.reason());
          return ledger.intents().begin(filing(picture, decision, row.id(), making), who);
        });
  }

  /** The same decision's next revision, because these intents can't become objects. */
  List<Intent> anew(
      Picture picture, Decision decision, List<Intent> instead, Making making, String why) {
    Filing filing = filing(picture, decision, instead.get(0).decisionId(), making);
    return ledger.intents().beginAnew(filing, decision.decidedBy(), why);
  }

  private Filing filing(Picture picture, Decision decision, String decisionId, Making making) {
    Visit visit =
        making.hasIdentity() ? decision.visit() : new Door(practice).hidden(decision.visit());
    boolean cropped = decision.crop() != null;
    return new Filing(
        picture.hash(),
        decisionId,
        decided(decision),
        making.text(),
        visit.patient().issuer(),
        visit.patient().id(),
        visit.key(),
        visit.studyInstanceUid().isEmpty() ? null : visit.studyInstanceUid(),
        Descriptions.device(picture.facts()),
        SeriesWords.of(decision.view(), Role.FRAME, cropped).set(),
        cropped ? List.of(Role.FRAME, Role.CROP) : List.of(Role.FRAME));
  }

  /** The decision without who made it and why: what the object's bytes follow from. */
  private static String decided(Decision decision) {
    return DecisionJson.write(DecisionRecord.of(decision.withoutWho()));
  }
}
