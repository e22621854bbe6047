package org.vestibule.forward;

/** One object by its identifiers, as they were when it was made here. */
public record Instance(
    String sopClassUid, String sopInstanceUid, String studyUid, String seriesUid) {}
