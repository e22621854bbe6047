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

  private static final String OR_AS_IT_IS =
      ". If there is none, verify says what is damaged, and \"repair --ledger-as-it-is\" lets work"
          + " go on";

  private LedgerSoundness() {}

  /** Says that SQLite finds its file in order, and that every row is as it was written. */
  static Outcome<Practice> require(Practice practice) {
    List<String> faults = practice.store().ledger().faults();
    if (!faults.isEmpty()) {
      return Outcome.refused(
          Outcome.Kind.DAMAGE, "the ledger's file is damaged: " + faults.get(0), ADVICE);
    }
    List<String> seals = practice.store().ledger().brokenSeals();
    if (!seals.isEmpty()) {
      return Outcome.refused(Outcome.Kind.DAMAGE, seals.get(0), ADVICE + OR_AS_IT_IS);
    }
    return chained(practice);
  }

  /** Whether what the index follows is as it was written. */
  private static Outcome<Practice> chained(Practice practice) {
    Optional<Long> broken = practice.store().ledger().changes().firstBroken();
    return broken.isEmpty()
        ? Outcome.done(practice)
        : Outcome.refused(
            Outcome.Kind.DAMAGE,
            "change " + broken.get() + " of the ledger does not follow from those before",
            ADVICE);
  }
}
