package org.vestibule.assign;

import java.time.LocalDateTime;
import org.jspecify.annotations.Nullable;

/**
 * A patient's time in the practice.
 *
 * @param key the practice's name for the visit, unique in its list
 * @param patient whose visit it is
 * @param start when it begins, on the practice's clock
 * @param end when it ends
 * @param accessionNumber of the order or encounter; empty if none
 * @param referrer who referred the patient, as a DICOM person name; empty if nobody
 * @param dentist who treats, likewise
 * @param studyInstanceUid given by a worklist; empty if none
 * @param order what was ordered, as the worklist told it; null if nothing was
 */
public record Visit(
    String key,
    Patient patient,
    LocalDateTime start,
    LocalDateTime end,
    String accessionNumber,
    String referrer,
    String dentist,
    String studyInstanceUid,
    @Nullable Order order) {

  public Visit {
    if (end.isBefore(start)) {
      throw new IllegalArgumentException("a visit ends after it starts");
    }
  }

  /** A visit without an order. */
  public Visit(
      String key,
      Patient patient,
      LocalDateTime start,
      LocalDateTime end,
      String accessionNumber,
      String referrer,
      String dentist,
      String studyInstanceUid) {
    this(key, patient, start, end, accessionNumber, referrer, dentist, studyInstanceUid, null);
  }

  /** The same visit with what a worklist told of it, where its own list says nothing. */
  public Visit ordered(String accession, String referredBy, String studyUid, Order ordered) {
    return new Visit(
        key,
        patient,
        start,
        end,
        accessionNumber.isEmpty() ? accession : accessionNumber,
        referrer.isEmpty() ? referredBy : referrer,
        dentist,
        studyInstanceUid.isEmpty() ? studyUid : studyInstanceUid,
        ordered);
  }

  /** The same visit with another account of its patient. */
  Visit of(Patient account) {
    return new Visit(
        key, account, start, end, accessionNumber, referrer, dentist, studyInstanceUid, order);
  }
}
