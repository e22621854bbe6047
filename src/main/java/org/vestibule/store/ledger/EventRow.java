package org.vestibule.store.ledger;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;

/** Something somebody did. */
public record EventRow(
    String who, String what, @Nullable ContentHash hash, String details, Instant at) {}
