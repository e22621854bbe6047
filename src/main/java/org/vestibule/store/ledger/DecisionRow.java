package org.vestibule.store.ledger;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;

/**
 * A decision about a photograph, as it was recorded.
 *
 * @param id 32 hexadecimal digits, never used again
 * @param source where it came from, such as {@code manifest}
 * @param why the reason if it corrects an earlier one, else empty
 * @param reason of what kind that is, a word of the reasons' table; none if it corrects nothing
 */
public record DecisionRow(
    String id,
    ContentHash hash,
    String json,
    String decidedBy,
    String source,
    String why,
    @Nullable String reason,
    Instant decidedAt) {}
