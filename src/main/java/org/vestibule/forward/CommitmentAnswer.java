package org.vestibule.forward;

/** Whether the archive will report on a storage commitment. Words are one line for people. */
public sealed interface CommitmentAnswer {

  /** A report will come, in this session or on a later association. */
  record Taken() implements CommitmentAnswer {}

  /** The archive does not do storage commitment, or not for us. */
  record Refused(int status, String words) implements CommitmentAnswer {}

  /**
   * The request did not come through now.
   *
   * @param sessionOver true if the session can't be used any more
   */
  record Failed(int status, String words, boolean sessionOver) implements CommitmentAnswer {}
}
