package org.vestibule.flow;

import java.time.Duration;
import java.util.List;
import org.vestibule.keys.TlsFiles;

/**
 * What a practice has settled about its pages.
 *
 * @param address the network address they are served at; loopback if nothing is settled
 * @param port from 0 (any that is free) to 65535
 * @param names by which browsers may call the server, besides its address; nothing else is answered
 * @param tls where the key for TLS comes from
 * @param files key and certificate for {@link Tls#FILE}
 * @param proxyHeader the header in which a proxy says who asks; empty trusts none
 * @param idle after how long without use a session ends
 * @param longest after how long a session ends, however much it is used
 */
public record WebRules(
    String address,
    int port,
    List<String> names,
    Tls tls,
    TlsFiles files,
    String proxyHeader,
    Duration idle,
    Duration longest) {

  /** How browsers' requests are kept secret on the way. */
  public enum Tls {
    /** Not at all: good for this machine alone. */
    NONE,
    /** By a certificate that Vestibule makes itself. */
    OWN,
    /** By a key and certificate that the practice got elsewhere. */
    FILE,
    /** By a proxy on this machine, which passes requests on. */
    PROXY
  }

  /** What holds if nothing is settled. */
  public static final WebRules DEFAULT =
      new WebRules(
          "127.0.0.1",
          8480,
          List.of(),
          Tls.NONE,
          TlsFiles.NONE,
          "",
          Duration.ofMinutes(30),
          Duration.ofHours(12));

  public WebRules {
    names = List.copyOf(names);
    if (port < 0 || port > 65_535 || idle.isNegative() || longest.isNegative()) {
      throw new IllegalArgumentException("port " + port + " or a session's length can't be");
    }
  }

  /** The same at another port. */
  public WebRules at(int otherPort) {
    return new WebRules(address, otherPort, names, tls, files, proxyHeader, idle, longest);
  }
}
