package org.vestibule.dicom.net;

import java.net.InetAddress;
import java.util.Optional;
import java.util.Set;
import org.vestibule.keys.TlsSide;

/**
 * Who may call us, where, and how many at once.
 *
 * @param address where we listen
 * @param port 0 for any that is free
 * @param own our title, by which we must be called
 * @param callers titles that may call; others are rejected
 * @param tls the called side of TLS; where it is empty connections are plain
 * @param mostAtOnce associations at the same time; more are rejected for now
 */
public record ListenerRules(
    InetAddress address,
    int port,
    AeTitle own,
    Set<AeTitle> callers,
    Optional<TlsSide> tls,
    Timeouts timeouts,
    int mostAtOnce) {

  public ListenerRules {
    callers = Set.copyOf(callers);
    if (mostAtOnce < 1 || mostAtOnce > 100) {
      throw new IllegalArgumentException("1 to 100 associations at once but " + mostAtOnce);
    }
  }
}
