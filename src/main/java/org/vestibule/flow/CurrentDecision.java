package org.vestibule.flow;

import java.util.List;
import java.util.Optional;
import org.vestibule.assign.DecisionRecord;
import org.vestibule.base.ContentHash;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.Ledger;

/** By which decision a photograph is filed, or being filed, now. */
final class CurrentDecision {

  private CurrentDecision() {}

  /** The decision as it was written down; empty if the photograph is not filed. */
  static Optional<DecisionRecord> of(ContentHash hash, Ledger ledger) {
    List<Intent> current = ledger.intents().current(hash);
    return current.isEmpty()
        ? Optional.empty()
        : ledger
            .decisions()
            .find(current.get(0).decisionId())
            .map(row -> DecisionJson.read(row.json()));
  }
}
