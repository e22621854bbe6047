package org.vestibule.forward;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.vestibule.store.ledger.DeliveryChange;
import org.vestibule.store.ledger.DeliveryRow;
import org.vestibule.store.ledger.DeliveryState;
import org.vestibule.store.ledger.Ledger;

/**
 * Writes reports of storage commitment into the ledger. What a report names beyond what was asked
 * for in its transaction is passed over, and so is whatever it says of what is settled already.
 */
final class LedgerReports implements ReportSink {

  private final Ledger ledger;
  private final Changes changes;
  private final String who;

  LedgerReports(Ledger ledger, Changes changes, String who) {
    this.ledger = ledger;
    this.changes = changes;
    this.who = who;
  }

  @Override
  public boolean take(CommitmentReport report) {
    return ledger.together(
        () -> {
          String transaction = report.transactionUid();
          if (ledger.deliveries().commitments().destination(transaction).isEmpty()) {
            return false;
          }
          Set<String> committed = new HashSet<>(report.committed());
          committed.removeAll(report.failed().keySet());
          List<DeliveryChange> said = new ArrayList<>();
          for (DeliveryRow row : ledger.deliveries().commitments().items(transaction)) {
            String uid = row.sopUid();
            if (uid == null || !isOpen(row.state())) {
              continue;
            }
            Integer reason = report.failed().get(uid);
            if (committed.contains(uid)) {
              said.add(changes.confirmed(row, "committed", transaction, Map.of()));
            } else if (reason != null && row.state() == DeliveryState.SENT) {
              said.add(failed(row, reason));
            }
          }
          ledger.deliveries().record(said, who);
          return true;
        });
  }

  private static boolean isOpen(DeliveryState state) {
    return state == DeliveryState.SENT || state == DeliveryState.FAILED;
  }

  /** An archive that says it has not got an object gets it again. */
  private DeliveryChange failed(DeliveryRow row, int reason) {
    String words = StoreStatus.commitmentWords(reason);
    return StatusTable.COMMITMENT.meaning(reason).effect() == StatusTable.Effect.REFUSED
        ? changes.refused(row, row.attempts(), reason, words)
        : changes.failed(row, row.attempts(), true, reason, words);
  }
}
