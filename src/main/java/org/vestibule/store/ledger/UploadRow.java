package org.vestibule.store.ledger;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;

/**
 * A file that a phone sends.
 *
 * @param id by which the phone calls it
 * @param link the page's number
 * @param name as the phone has it
 * @param sizeBytes as the phone said beforehand
 * @param view the view's key, as a person at the phone said; empty if nobody did
 * @param begunAt when the phone began to send it
 * @param received what became of it; null as long as it is not received
 */
public record UploadRow(
    String id,
    int link,
    String name,
    long sizeBytes,
    String view,
    Instant begunAt,
    @Nullable Received received) {

  /**
   * A file that is here.
   *
   * @param arrivedAs its name in the inbox, with forward slashes
   * @param confirmed true if the phone computed the same hash
   */
  public record Received(ContentHash hash, String arrivedAs, boolean confirmed, Instant at) {}
}
