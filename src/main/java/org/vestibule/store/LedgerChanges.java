package org.vestibule.store;

import java.util.List;
import java.util.Optional;
import org.vestibule.store.index.IndexChanges;
import org.vestibule.store.ledger.ChangeRow;
import org.vestibule.store.ledger.Ledger;

/** Hands the ledger's changes to the index. */
final class LedgerChanges implements IndexChanges {

  private final Ledger ledger;

  LedgerChanges(Ledger ledger) {
    this.ledger = ledger;
  }

  @Override
  public String practice() {
    return ledger.practice();
  }

  @Override
  public Optional<Change> last() {
    return ledger.changes().last().map(LedgerChanges::change);
  }

  @Override
  public Optional<Change> at(long sequence) {
    return ledger.changes().at(sequence).map(LedgerChanges::change);
  }

  @Override
  public List<Change> after(long sequence, int most) {
    return ledger.changes().after(sequence, most).stream().map(LedgerChanges::change).toList();
  }

  private static Change change(ChangeRow row) {
    return new Change(row.sequence(), row.id(), row.record(), row.mark());
  }
}
