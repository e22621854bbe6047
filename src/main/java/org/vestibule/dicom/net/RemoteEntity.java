package org.vestibule.dicom.net;

import java.util.Optional;
import org.vestibule.keys.TlsSide;

/**
 * Whom we call, and as whom.
 *
 * @param host name or address; with TLS its certificate must be for it
 * @param tls the calling side of TLS; where it is empty the connection is plain
 */
public record RemoteEntity(
    String host,
    int port,
    AeTitle called,
    AeTitle calling,
    Optional<TlsSide> tls,
    Timeouts timeouts) {

  public RemoteEntity {
    if (port < 1 || port > 65535) {
      throw new IllegalArgumentException("a port is 1 to 65535 but was " + port);
    }
  }

  /** How it is called in a sentence: title, host and port. */
  String words() {
    return called + " at " + host + ":" + port;
  }
}
