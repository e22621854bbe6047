package org.vestibule.flow.delivering;

import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.store.ledger.Ledger;

/** The notes that are on the disk. */
final class MadeNotes {

  private final Ledger ledger;

  MadeNotes(Ledger ledger) {
    this.ledger = ledger;
  }

  Outcome<String> note(ContentHash photo, int revision) {
    return ledger
        .notes()
        .of(photo, revision)
        .map(note -> Outcome.done(note.sopUid()))
        .orElseGet(
            () ->
                Outcome.refused(
                    "the note that takes the object back is not made yet",
                    "run forward again when nothing else runs; it says why if it can't be made"));
  }
}
