package org.vestibule.audit;

import java.io.IOException;

/** A syslog server that is there and does not do its part; the message goes on after its name. */
final class LineEndedException extends IOException {

  private static final long serialVersionUID = 1L;

  LineEndedException(String does) {
    super(does);
  }
}
