package org.vestibule.flow;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.store.ledger.CorrectionRow;
import org.vestibule.store.ledger.Ledger;

/**
 * The filing of a photograph that a person saw when they decided something about it. On a page that
 * stays open it may be another one by now, which nobody who decided has seen.
 */
public final class LookedAt {

  /** Whatever is filed when it is done: for what is read and written in one go. */
  static final LookedAt NOW = new LookedAt(null);

  private final @Nullable String decision;

  private LookedAt(@Nullable String decision) {
    this.decision = decision;
  }

  /**
   * The filing by this decision.
   *
   * @param id as the ledger calls it; empty if the photograph was not filed
   */
  public static LookedAt filedBy(String id) {
    return new LookedAt(id);
  }

  /** What happened to the photograph since then; empty if it stands as it was seen. */
  Optional<Meanwhile> since(ContentHash photo, Ledger ledger) {
    String now = CurrentDecision.id(photo, ledger).orElse("");
    if (decision == null || decision.equals(now)) {
      return Optional.empty();
    }
    if (now.isEmpty()) {
      List<CorrectionRow> all = ledger.corrections().of(photo);
      CorrectionRow last = all.isEmpty() ? null : all.get(all.size() - 1);
      return Optional.of(
          new Meanwhile(
              Meanwhile.Kind.OUT,
              last == null ? "" : last.who(),
              last == null ? Instant.EPOCH : last.at()));
    }
    Meanwhile.Kind kind = decision.isEmpty() ? Meanwhile.Kind.FILED : Meanwhile.Kind.CORRECTED;
    return ledger
        .decisions()
        .find(now)
        .map(row -> new Meanwhile(kind, row.decidedBy(), row.decidedAt()));
  }

  /** The refusal of what was decided over another filing; empty if there is no reason for one. */
  <T> Optional<Refused<T>> objection(ContentHash photo, Practice practice) {
    return since(photo, practice.store().ledger())
        .map(found -> found.refusal(practice.settings().zone()));
  }
}
