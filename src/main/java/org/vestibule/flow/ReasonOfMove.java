package org.vestibule.flow;

import java.util.Objects;
import org.vestibule.assign.DecisionRecord;
import org.vestibule.encode.RejectionReason;

/** What kind of reason follows from what a correction changed, where nobody stated one. */
final class ReasonOfMove {

  private ReasonOfMove() {}

  /**
   * A word of the reasons' table: another patient or visit is certain, and so are side, view and
   * teeth; for everything else the most cautious one.
   */
  static String of(DecisionRecord before, DecisionRecord now) {
    if (!before.visit().equals(now.visit())
        || !before.patientId().equals(now.patientId())
        || !before.issuer().equals(now.issuer())) {
      return RejectionReason.WRONG_VISIT;
    }
    boolean sameSide =
        before.view().equals(now.view())
            && before.teeth().equals(now.teeth())
            && before.mirror().equals(now.mirror())
            && Objects.equals(before.incisors(), now.incisors())
            && Objects.equals(before.up(), now.up());
    return sameSide ? RejectionReason.UNSAFE : RejectionReason.WRONG_SIDE;
  }
}
