package org.vestibule.store.ledger;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A page that was opened for one visit, for phones.
 *
 * @param mark the hash of its secret
 * @param visit the visit's key: the word of who opened it
 * @param series the views that are to be taken, in words; empty if none was chosen
 * @param who opened it
 * @param ended when somebody ended it; null if nobody did
 */
public record PhoneLinkRow(
    int number,
    String mark,
    String visit,
    String series,
    String who,
    Instant at,
    Instant endsAt,
    @Nullable Instant ended) {

  /** True if phones may use it at this moment. */
  public boolean isOpen(Instant now) {
    return ended == null && now.isBefore(endsAt);
  }
}
