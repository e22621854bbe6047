package org.vestibule.store.ledger;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;

/**
 * Why a revision of a photograph no longer counts.
 *
 * @param newRevision the one that took its place; none if it was rejected
 */
public record CorrectionRow(
    ContentHash hash,
    int revision,
    @Nullable Integer newRevision,
    String who,
    String why,
    Instant at) {}
