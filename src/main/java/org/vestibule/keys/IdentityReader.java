package org.vestibule.keys;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.PrivateKey;
import java.security.PublicKey;
import java.security.Signature;
import java.security.cert.X509Certificate;
import java.security.interfaces.RSAKey;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Date;
import java.util.List;
import java.util.Optional;

/** Puts key and certificates together and refuses what a connection would fail on. */
final class IdentityReader {

  /** RFC 9325 section 4.5: a modulus of at least 2048 bits. */
  private static final int LEAST_RSA_BITS = 2048;

  private final KeyBytes certificateFile;
  private final KeyBytes keyFile;
  private final Optional<char[]> password;

  IdentityReader(KeyBytes certificateFile, Optional<KeyBytes> key, Optional<char[]> password) {
    this.certificateFile = certificateFile;
    this.keyFile = key.orElse(certificateFile);
    this.password = password;
  }

  Identity read(Instant now) throws KeyRefusal {
    Identity identity = pair();
    X509Certificate own = identity.own();
    if (now.isAfter(own.getNotAfter().toInstant())) {
      throw new KeyRefusal(
          "the certificate in " + certificateFile.name() + " ended on " + day(own.getNotAfter()),
          "have a new certificate issued and name its file in the settings");
    }
    if (now.isBefore(own.getNotBefore().toInstant())) {
      throw new KeyRefusal(
          "the certificate in "
              + certificateFile.name()
              + " is not valid before "
              + day(own.getNotBefore()),
          "check this computer's clock, or wait for that day");
    }
    if (own.getPublicKey() instanceof RSAKey rsa && rsa.getModulus().bitLength() < LEAST_RSA_BITS) {
      throw new KeyRefusal(
          "the RSA key in "
              + keyFile.name()
              + " has "
              + rsa.getModulus().bitLength()
              + " bits, fewer than "
              + LEAST_RSA_BITS,
          "have a longer key and a new certificate made");
    }
    return identity;
  }

  private Identity pair() throws KeyRefusal {
    if (!keyFile.isPem()) {
      if (!keyFile.looksLikePkcs12()) {
        throw keyFile.unknownForm();
      }
      return new Pkcs12File(keyFile, password).identity().orElseThrow(this::noKey);
    }
    PrivateKey key = new PemFile(keyFile, password).key().orElseThrow(this::noKey);
    if (!certificateFile.isPem()) {
      throw certificateFile.unknownForm();
    }
    List<X509Certificate> found = new PemFile(certificateFile, password).certificates();
    if (found.isEmpty()) {
      throw new KeyRefusal(
          certificateFile.name() + " holds no certificate",
          "give the file with the certificate that belongs to the key");
    }
    return new Identity(key, chain(found, key));
  }

  private KeyRefusal noKey() {
    return new KeyRefusal(
        keyFile.name() + " holds no private key",
        "name the file with the key, or put the key into this one");
  }

  /** Our own certificate, then its issuer, and so on as far as the file has them. */
  private List<X509Certificate> chain(List<X509Certificate> found, PrivateKey key)
      throws KeyRefusal {
    List<X509Certificate> left = new ArrayList<>(found);
    Optional<X509Certificate> next =
        left.stream().filter(c -> belong(key, c.getPublicKey())).findFirst();
    if (next.isEmpty()) {
      throw new KeyRefusal(
          "the key in "
              + keyFile.name()
              + " does not belong to a certificate in "
              + certificateFile.name(),
          "give the key that the certificate was issued for");
    }
    List<X509Certificate> chain = new ArrayList<>();
    while (next.isPresent()) {
      X509Certificate current = next.get();
      chain.add(current);
      left.remove(current);
      next =
          left.stream()
              .filter(c -> c.getSubjectX500Principal().equals(current.getIssuerX500Principal()))
              .findFirst();
    }
    return chain;
  }

  /** True if what the key signs, the certificate's key accepts. */
  private static boolean belong(PrivateKey key, PublicKey certified) {
    if (!key.getAlgorithm().equals(certified.getAlgorithm())) {
      return false;
    }
    String algorithm =
        switch (key.getAlgorithm()) {
          case "RSA" -> "SHA256withRSA";
          case "EC" -> "SHA256withECDSA";
          default -> key.getAlgorithm();
        };
    try {
      byte[] probe = "probe".getBytes(StandardCharsets.US_ASCII);
      Signature signer = Signature.getInstance(algorithm);
      signer.initSign(key);
      signer.update(probe);
      byte[] signed = signer.sign();
      signer.initVerify(certified);
      signer.update(probe);
      return signer.verify(signed);
    } catch (GeneralSecurityException differs) {
      return false;
    }
  }

  private static LocalDate day(Date date) {
    return date.toInstant().atZone(ZoneOffset.UTC).toLocalDate();
  }
}
