package org.vestibule.keys;

import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import org.vestibule.base.Outcome;

/**
 * The files that a TLS connection is made from.
 *
 * @param identity our certificate, with those of its issuers, as PEM; or PKCS#12 with the key
 * @param key our private key as PEM, where it is not in the identity's file
 * @param passwordFile a file whose first line opens the key or the PKCS#12 file
 * @param trusted certificates that we trust, as PEM or PKCS#12; a client without them trusts those
 *     that the Java runtime trusts, a server with them asks every client for a certificate
 */
public record TlsFiles(
    Optional<Path> identity,
    Optional<Path> key,
    Optional<Path> passwordFile,
    Optional<Path> trusted) {

  /** A client without a certificate that trusts what the Java runtime trusts. */
  public static final TlsFiles NONE =
      new TlsFiles(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

  /**
   * The calling side: checks the other side's certificate and host name.
   *
   * <p>Refusals name a file without its folder and say what is wrong with it.
   */
  public Outcome<TlsSide> client(Clock clock) {
    return TlsSide.of(this, true, clock);
  }

  /** The called side, which must have an identity. */
  public Outcome<TlsSide> server(Clock clock) {
    if (identity.isEmpty()) {
      return Outcome.refused(
          "no certificate is given for the side that is called",
          "name a certificate and its key in the settings");
    }
    return TlsSide.of(this, false, clock);
  }
}
