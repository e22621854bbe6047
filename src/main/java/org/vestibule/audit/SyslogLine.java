package org.vestibule.audit;

import java.io.Closeable;
import java.io.IOException;

/** An open way to a syslog server. */
interface SyslogLine extends Closeable {

  /** Hands over one message. */
  void send(String time, String xml) throws IOException;

  /**
   * Makes sure, as far as the protocol can, that everything handed over has left.
   *
   * @return false if the other side does not end the connection when it is told to: it has been
   *     sent everything, but has not said so
   * @throws IOException if the other side has gone away meanwhile
   */
  boolean settle() throws IOException;
}
