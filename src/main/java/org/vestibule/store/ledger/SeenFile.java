package org.vestibule.store.ledger;

import java.time.Instant;
import org.vestibule.base.ContentHash;

/**
 * A file as it arrived.
 *
 * @param name its place below the folder it came from, with forward slashes
 */
public record SeenFile(ContentHash hash, String name, long sizeBytes, Instant modified) {}
