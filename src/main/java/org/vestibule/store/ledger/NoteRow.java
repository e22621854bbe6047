package org.vestibule.store.ledger;

import java.time.Instant;
import org.vestibule.base.ContentHash;

/**
 * A rejection note that is on the disk: it says that a revision of a photograph no longer counts.
 *
 * @param sopUid the note's own identity; the object store has its bytes by it
 * @param hash the photograph
 * @param revision the one that no longer counts
 * @param reason a word of the reasons' table
 * @param fileHash over the whole file
 */
public record NoteRow(
    String sopUid,
    ContentHash hash,
    int revision,
    String reason,
    ContentHash fileHash,
    long sizeBytes,
    Instant at) {}
