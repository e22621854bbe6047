package org.vestibule.encode;

/**
 * Who an object is, as the ledger settled it before anything was written.
 *
 * @param sopInstanceUid identity of the object
 * @param studyInstanceUid the visit
 * @param seriesInstanceUid the visit's photographs of one camera, set and role
 * @param seriesNumber from 1, never renumbered
 * @param instanceNumber from 1 within the series, never renumbered
 */
public record ObjectIdentity(
    String sopInstanceUid,
    String studyInstanceUid,
    String seriesInstanceUid,
    int seriesNumber,
    int instanceNumber) {}
