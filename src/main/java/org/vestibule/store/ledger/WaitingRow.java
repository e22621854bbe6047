package org.vestibule.store.ledger;

import java.time.Instant;
import org.vestibule.base.ContentHash;

/**
 * A photograph that waits.
 *
 * @param reasons JSON text
 * @param proposal JSON text
 * @param since when it began to wait
 */
public record WaitingRow(ContentHash hash, String reasons, String proposal, Instant since) {}
