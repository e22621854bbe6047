package org.vestibule.store.ledger;

import java.time.Instant;
import org.vestibule.base.ContentHash;

/** A photograph as the ledger knows it. */
public record PhotoRow(ContentHash hash, long sizeBytes, Instant firstSeenAt, PhotoState state) {}
