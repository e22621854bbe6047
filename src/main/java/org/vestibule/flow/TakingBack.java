package org.vestibule.flow;

import static java.util.Objects.requireNonNull;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.vestibule.assign.Decision;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.encode.RejectionReason;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.store.ledger.DecisionRow;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.Ledger;

/** Takes back what a person filed, so that the photograph waits again with what was said of it. */
final class TakingBack {

  private final Practice practice;
  private final Ledger ledger;

  TakingBack(Practice practice) {
    this.practice = practice;
    this.ledger = practice.store().ledger();
  }

  /** Takes one back. */
  Outcome<String> one(ContentHash hash, String by, Why why) throws IOException {
    Optional<DecisionRow> filed = CurrentDecision.row(hash, ledger);
    if (filed.isEmpty()) {
      return Outcome.refused("this photograph is not filed", "nothing needs to be taken back");
    }
    if (!filed.get().source().equals("person")) {
      return Outcome.refused(
          "this photograph was filed by " + filed.get().source() + ", not by hand",
          "correct it with move, or take it out with reject; taken back, the next run would file"
              + " it again");
    }
    CaptureFacts facts = new SourceFiles(practice).facts(hash);
    Outcome<Decision> before =
        new Resumption(practice, new Filer(practice)).decision(filed.get().id());
    Map<String, String> said =
        before instanceof Done<Decision> known
            ? ProposalWords.of(known.value(), facts.orientation())
            : Map.of();
    List<Intent> taken = ledger.intents().current(hash);
    Outcome<String> back = ledger.together(() -> takenBack(hash, by, why, said, facts));
    practice.audit().accessed(taken, 'D', by);
    return back;
  }

  private Outcome<String> takenBack(
      ContentHash hash, String by, Why why, Map<String, String> said, CaptureFacts facts) {
    String reason = requireNonNull(why.orElse(RejectionReason.UNSAFE).reason());
    ledger.corrections().reject(hash, by, why.words(), reason);
    String id = practice.store().ids().of(hash);
    new WaitingPhotos(practice)
        .put(
            hash,
            List.of(
                new WaitingPhoto.Reason(
                    "TAKEN_BACK",
                    by + " took its filing back",
                    "say what it shows and file it again, or take it off the list")),
            said,
            Descriptions.waiting(hash, id, facts));
    return Outcome.done("Photograph " + id + " waits again. Its object stays in the record.");
  }
}
