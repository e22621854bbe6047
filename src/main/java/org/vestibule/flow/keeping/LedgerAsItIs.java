package org.vestibule.flow.keeping;

import java.io.IOException;
import java.util.List;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import org.vestibule.store.RunLock;

/**
 * Takes a ledger whose rows are not as they were written for what it says now. The last way out
 * where no sound copy is left: nothing is mended by it, and the ledger keeps who said so and why.
 */
public final class LedgerAsItIs {

  private LedgerAsItIs() {}

  /**
   * Seals every row as it stands.
   *
   * @return what was damaged and is taken as it is, in words
   */
  @SuppressWarnings("try") // the lock is held, not used
  public static Outcome<List<String>> take(Practice practice, String who, String why)
      throws IOException {
    Outcome<RunLock> lock = practice.store().lock("repair");
    if (!(lock instanceof Done<RunLock> held)) {
      return ((Refused<RunLock>) lock).as();
    }
    try (RunLock holding = held.value()) {
      List<String> faults = practice.store().ledger().faults();
      if (!faults.isEmpty()) {
        return Outcome.refused(
            Outcome.Kind.DAMAGE,
            "the ledger's file is damaged, so that it can't be worked with: " + faults.get(0),
            "restore the ledger from a snapshot: \"vestibule restore --ledger-only\"");
      }
      List<String> broken = practice.store().ledger().brokenSeals();
      if (broken.isEmpty()) {
        return Outcome.refused(
            "every row of the ledger is as it was written",
            "leave --ledger-as-it-is out; there is nothing to take as it is");
      }
      practice.store().ledger().sealAnew(who, why + ": " + String.join("; ", broken));
      return Outcome.done(broken);
    }
  }
}
