package org.vestibule.forward;

/** Takes reports of storage commitment, on whichever association they arrive. */
@FunctionalInterface
public interface ReportSink {

  /**
   * Takes a report. When this returns true, what it says is on the disk. May be called by several
   * threads at once, and with the same report again.
   *
   * @return false if no such transaction was ever begun here, which is to be answered with the
   *     status of an invalid argument
   */
  boolean take(CommitmentReport report);
}
