package org.vestibule.audit;

import java.io.IOException;

/** A message that a datagram can't carry; it stays in the file. */
final class MessageTooLongException extends IOException {

  private static final long serialVersionUID = 1L;

  MessageTooLongException(int bytes) {
    super("a message has " + bytes + " bytes, more than a datagram carries");
  }
}
