package org.vestibule.keys;

import java.io.IOException;
import java.security.cert.CertificateException;
import java.security.cert.CertificateExpiredException;
import java.util.Locale;
import javax.net.ssl.SSLException;
import org.vestibule.base.Outcome;

/**
 * Says in words why TLS did not come about.
 *
 * <p>The JDK tells some causes by its message alone; what is not recognised is told without them.
 */
public final class TlsFailure {

  private TlsFailure() {}

  /** True if the failure is TLS's own, not the network's. */
  public static boolean isTls(IOException failure) {
    return failure instanceof SSLException;
  }

  /**
   * Reason and advice for an IT administrator.
   *
   * @param peer how the other side is called in the sentence, such as {@code archive.example:2762}
   */
  public static <T> Outcome<T> refused(IOException failure, String peer) {
    String text = String.valueOf(failure.getMessage()).toLowerCase(Locale.ROOT);
    if (cause(failure, CertificateExpiredException.class)) {
      return Outcome.refused(
          "the certificate of " + peer + " has ended", "have it renewed on the other side");
    }
    if (text.contains("no name matching") || text.contains("subject alternative")) {
      return Outcome.refused(
          "the certificate of " + peer + " is not for that host name",
          "call it by a name in its certificate, or have one issued for this name");
    }
    if (cause(failure, CertificateException.class)) {
      return Outcome.refused(
          "the certificate of " + peer + " is not trusted",
          "name the certificate of the other side, or of who issued it, as trusted");
    }
    if (text.contains("unrecognized ssl message") || text.contains("not an ssl/tls record")) {
      return Outcome.refused(
          peer + " does not speak TLS on this port",
          "check the port, or have TLS switched on there; nothing was sent unprotected");
    }
    return alert(text, peer);
  }

  private static <T> Outcome<T> alert(String text, String peer) {
    if (text.contains("certificate_required")
        || text.contains("bad_certificate")
        || text.contains("unknown_ca")
        || text.contains("certificate_unknown")) {
      return Outcome.refused(
          peer + " does not accept our certificate, or asks for one and got none",
          "name a certificate and key that the other side trusts");
    }
    if (text.contains("protocol_version")
        || text.contains("handshake_failure")
        || text.contains("no cipher suites in common")
        || text.contains("not enabled or supported")) {
      return Outcome.refused(
          peer
              + " and we have no TLS version and cipher suite in common, or it wants a certificate",
          "have TLS 1.2 or 1.3 with the suites of BCP 195 allowed there");
    }
    return Outcome.refused(
        "TLS with " + peer + " failed",
        "check that the port is one for TLS, and both sides' certificates");
  }

  private static boolean cause(Throwable failure, Class<? extends Throwable> kind) {
    int depth = 0;
    for (Throwable t = failure; t != null && depth < 10; t = t.getCause(), depth++) {
      if (kind.isInstance(t)) {
        return true;
      }
    }
    return false;
  }
}
