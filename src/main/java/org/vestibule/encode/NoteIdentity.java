package org.vestibule.encode;

/**
 * Who a rejection note is.
 *
 * @param sopInstanceUid identity of the note
 * @param seriesInstanceUid the notes about one series of photographs
 */
public record NoteIdentity(String sopInstanceUid, String seriesInstanceUid) {}
