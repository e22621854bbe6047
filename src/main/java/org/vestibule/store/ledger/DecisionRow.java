package org.vestibule.store.ledger;

import java.time.Instant;
import org.vestibule.base.ContentHash;

/**
 * A decision about a photograph, as it was recorded.
 *
 * @param id 32 hexadecimal digits, never used again
 * @param source where it came from, such as {@code manifest}
 * @param why the reason if it corrects an earlier one, else empty
 */
public record DecisionRow(
    String id,
    ContentHash hash,
    String json,
    String decidedBy,
    String source,
    String why,
    Instant decidedAt) {}
