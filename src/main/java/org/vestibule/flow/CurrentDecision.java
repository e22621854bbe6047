package org.vestibule.flow;

import java.util.Optional;
import org.vestibule.assign.DecisionRecord;
import org.vestibule.base.ContentHash;
import org.vestibule.store.ledger.DecisionRow;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.Ledger;

/** By which decision a photograph is filed, or being filed, now. */
final class CurrentDecision {

  private CurrentDecision() {}

  /** The decision as it was written down; empty if the photograph is not filed. */
  static Optional<DecisionRecord> of(ContentHash hash, Ledger ledger) {
    return row(hash, ledger).map(row -> DecisionJson.read(row.json()));
  }

  /** The decision as the ledger has it; empty if the photograph is not filed. */
  static Optional<DecisionRow> row(ContentHash hash, Ledger ledger) {
    return id(hash, ledger).flatMap(ledger.decisions()::find);
  }

  /** What the ledger calls the decision; empty if the photograph is not filed. */
  static Optional<String> id(ContentHash hash, Ledger ledger) {
    return ledger.intents().current(hash).stream().findFirst().map(Intent::decisionId);
  }
}
