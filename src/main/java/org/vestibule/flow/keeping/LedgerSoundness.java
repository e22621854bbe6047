package org.vestibule.flow.keeping;

import java.util.List;
import java.util.Optional;
import org.vestibule.base.Outcome;
import org.vestibule.flow.Practice;

/** Refuses to carry a damaged ledger any further: a copy of it would push sound ones out. */
final class LedgerSoundness {

  private static final String ADVICE =
      "restore the ledger from a snapshot: \"vestibule restore --ledger-only\"; sound snapshots of"
          + " a backup were left as they are";

  private LedgerSoundness() {}

  static Outcome<Practice> require(Practice practice) {
    List<String> faults = practice.store().ledger().faults();
    if (!faults.isEmpty()) {
      return Outcome.refused(
          Outcome.Kind.DAMAGE, "the ledger's file is damaged: " + faults.get(0), ADVICE);
    }
    Optional<Long> broken = practice.store().ledger().changes().firstBroken();
    return broken.isEmpty()
        ? Outcome.done(practice)
        : Outcome.refused(
            Outcome.Kind.DAMAGE,
            "change " + broken.get() + " of the ledger does not follow from those before",
            ADVICE);
  }
}
