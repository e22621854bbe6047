package org.vestibule.audit;

/**
 * What became of the messages that were still to be sent.
 *
 * @param sent how many left now
 * @param waiting how many are still to be sent; they stay in the files
 * @param tooLong how many the server will never get, because a datagram can't carry them
 * @param trouble why some are still waiting, with what to do; empty if none is
 */
public record SendReport(int sent, int waiting, int tooLong, String trouble) {

  /** Nothing was to be sent. */
  static final SendReport NOTHING = new SendReport(0, 0, 0, "");
}
