package org.vestibule.store.ledger;

import java.time.Instant;
import org.vestibule.base.ContentHash;
import org.vestibule.encode.ObjectIdentity;
import org.vestibule.encode.Role;

/**
 * What is about to become an object, or became one.
 *
 * @param revision counts the filings of one photograph from 1
 * @param recipe what an object is made by, besides photograph and decision, as text
 * @param seriesNumber counts the series of a study from 1, never renumbered
 * @param instanceNumber counts the objects of a series from 1, never renumbered
 */
public record Intent(
    ContentHash hash,
    Role role,
    String decisionId,
    int revision,
    String recipe,
    String studyUid,
    String seriesUid,
    String sopUid,
    int seriesNumber,
    int instanceNumber,
    Instant at) {

  /** The identity as the encoder takes it. */
  public ObjectIdentity identity() {
    return new ObjectIdentity(sopUid, studyUid, seriesUid, seriesNumber, instanceNumber);
  }
}
