package org.vestibule.store.ledger;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;

/**
 * Why a revision of a photograph no longer counts.
 *
 * @param newRevision the one that took its place; none if it was rejected
 * @param reason a word of the reasons' table; none in corrections of older versions
 */
public record CorrectionRow(
    ContentHash hash,
    int revision,
    @Nullable Integer newRevision,
    String who,
    String why,
    @Nullable String reason,
    Instant at) {}
