package org.vestibule.store.ledger;

import org.vestibule.base.ContentHash;

/**
 * An object that is on the disk and proved.
 *
 * @param fileHash over the whole file
 * @param pixelHash over what the encoder calls the picture, 64 hexadecimal digits
 * @param trimmedColumns how many columns of samples were dropped with a person's permission
 */
public record KeptObject(
    String sopUid,
    ContentHash fileHash,
    ContentHash pixelHash,
    long sizeBytes,
    int trimmedColumns,
    int trimmedRows) {}
