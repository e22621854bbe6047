package org.vestibule.dicom.net;

/** Takes what comes in at the listener; called from several threads. */
public interface ReportReceiver {

  /**
   * An archive reports on storage commitment.
   *
   * @param from the title that it gave itself
   * @return true once the report is safely kept; false if nobody here asked for it
   */
  boolean report(AeTitle from, CommitmentReport report);

  /** Somebody was turned away or broke off; the words are for an administrator's eyes. */
  void turnedAway(String words);
}
