package org.vestibule.flow;

import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Resumption.Begun;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.store.ledger.Ledger;
import org.vestibule.store.ledger.PhotoRow;
import org.vestibule.store.ledger.PhotoState;

/**
 * Takes back a filing that can't be finished, in one transaction: its intent is given up, and the
 * photograph waits with the reason. One that is filed already stays as it was filed.
 */
final class Setback {

  /** The kind of the reason if a picture can't be filed as it is. */
  static final String PICTURE = "PICTURE";

  /** The kind of the reason if this program failed. */
  static final String DEFECT = "DEFECT";

  private final Practice practice;
  private final Ledger ledger;

  Setback(Practice practice) {
    this.practice = practice;
    this.ledger = practice.store().ledger();
  }

  /** The reason, if the picture can't be filed. */
  WaitingPhoto.Reason refused(
      ContentHash hash,
      CaptureFacts facts,
      Map<String, String> proposal,
      String who,
      Refused<?> why) {
    WaitingPhoto.Reason reason = new WaitingPhoto.Reason(PICTURE, why.reason(), why.advice());
    takeBack(hash, facts, proposal, who, reason);
    return reason;
  }

  /** The reason, if the program failed on this photograph; the audit trail keeps the defect. */
  WaitingPhoto.Reason failed(
      ContentHash hash,
      CaptureFacts facts,
      Map<String, String> proposal,
      String who,
      Throwable failure) {
    WaitingPhoto.Reason reason = defect(failure);
    ledger.together(
        () -> {
          ledger.events().add(who, "defect", hash, failure.getClass().getSimpleName());
          takeBack(hash, facts, proposal, who, reason);
          return hash;
        });
    return reason;
  }

  WaitingPhoto.Reason refused(Begun begun, Refused<?> why) {
    Picture picture = begun.picture();
    return refused(picture.hash(), picture.facts(), said(begun), begun.decision().decidedBy(), why);
  }

  WaitingPhoto.Reason failed(Begun begun, Throwable failure) {
    Picture picture = begun.picture();
    String who = begun.decision().decidedBy();
    return failed(picture.hash(), picture.facts(), said(begun), who, failure);
  }

  private static Map<String, String> said(Begun begun) {
    return ProposalWords.of(begun.decision(), begun.picture().facts().orientation());
  }

  /** Tells of a defect by its kind alone: its words may hold what is in the photograph. */
  static WaitingPhoto.Reason defect(Throwable failure) {
    return new WaitingPhoto.Reason(
        DEFECT,
        "the program failed on this photograph ("
            + failure.getClass().getSimpleName()
            + "), which is a defect in the program",
        "nothing of the photograph is lost; call the command again with --trace and report what it"
            + " prints, or reject the photograph");
  }

  private void takeBack(
      ContentHash hash,
      CaptureFacts facts,
      Map<String, String> proposal,
      String who,
      WaitingPhoto.Reason reason) {
    ledger.together(
        () -> {
          ledger.intents().abandon(hash, who, reason.sentence());
          PhotoState state = ledger.photos().find(hash).map(PhotoRow::state).orElse(null);
          if (state == PhotoState.SEEN || state == PhotoState.WAITING) {
            String id = practice.store().ids().of(hash);
            new WaitingPhotos(practice)
                .put(hash, List.of(reason), proposal, Descriptions.waiting(hash, id, facts));
          }
          return hash;
        });
  }

  /** True if the machine failed, not the program on one photograph: then the run must end. */
  static boolean isMachine(Throwable failure) {
    return failure instanceof UncheckedIOException;
  }
}
