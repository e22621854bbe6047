package org.vestibule.keys;

import java.io.IOException;
import java.net.Socket;
import java.time.Clock;
import java.time.Instant;
import java.util.Optional;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLParameters;
import javax.net.ssl.SSLSocket;
import org.vestibule.base.Outcome;

/**
 * One side of TLS, ready for connections: TLS 1.2 and 1.3 with the suites of BCP 195 alone.
 *
 * <p>A client checks that the certificate is for the host it calls (RFC 9110 section 4.3.4). Use
 * {@link #context()} together with {@link #parameters()}: the context alone allows more.
 */
public final class TlsSide {

  private final SSLContext context;
  private final boolean client;
  private final boolean asksForCertificate;
  private final Optional<Instant> ends;

  private TlsSide(
      SSLContext context, boolean client, boolean asksForCertificate, Optional<Instant> ends) {
    this.context = context;
    this.client = client;
    this.asksForCertificate = asksForCertificate;
    this.ends = ends;
  }

  static Outcome<TlsSide> of(TlsFiles files, boolean client, Clock clock) {
    try {
      TlsMaterial material = TlsMaterial.read(files, clock.instant());
      return Outcome.done(
          new TlsSide(
              material.context(),
              client,
              !client && files.trusted().isPresent(),
              material.identity().map(i -> i.own().getNotAfter().toInstant())));
    } catch (KeyRefusal refusal) {
      return refusal.outcome();
    }
  }

  public SSLContext context() {
    return context;
  }

  /** Protocols, suites, host name check and request for a certificate, as a fresh object. */
  public SSLParameters parameters() {
    SSLParameters parameters = new SSLParameters(TlsSuites.names(), TlsSuites.protocols());
    parameters.setUseCipherSuitesOrder(true);
    if (client) {
      parameters.setEndpointIdentificationAlgorithm("HTTPS");
    } else if (asksForCertificate) {
      parameters.setNeedClientAuth(true);
    }
    return parameters;
  }

  /**
   * TLS over a connected socket; closing it closes the socket. The handshake is still to be done.
   *
   * @param host the name that the peer's certificate must be for
   */
  public SSLSocket over(Socket plain, String host, int port) throws IOException {
    SSLSocket socket = (SSLSocket) context.getSocketFactory().createSocket(plain, host, port, true);
    socket.setUseClientMode(client);
    socket.setSSLParameters(parameters());
    return socket;
  }

  /** When our own certificate ends, if we have one. */
  public Optional<Instant> certificateEnds() {
    return ends;
  }
}
