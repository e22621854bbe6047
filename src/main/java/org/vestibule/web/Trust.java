package org.vestibule.web;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.cert.Certificate;
import java.security.cert.CertificateException;
import java.security.cert.CertificateFactory;
import java.util.HexFormat;
import org.vestibule.base.ContentHash;

/**
 * The practice's own certificate, as devices are to trust it.
 *
 * @param pem the issuer's certificate
 * @param fingerprint SHA-256 of it, as devices show it: pairs of hexadecimal digits, eight of them
 *     together
 */
record Trust(String pem, String fingerprint) {

  /** Reads the certificate of the practice's own issuer. */
  static Trust read(Path file) throws IOException {
    byte[] pem = Files.readAllBytes(file);
    try {
      Certificate certificate =
          CertificateFactory.getInstance("X.509")
              .generateCertificate(new ByteArrayInputStream(pem));
      String hash = ContentHash.of(certificate.getEncoded()).hex();
      String pairs =
          HexFormat.ofDelimiter(":").withUpperCase().formatHex(HexFormat.of().parseHex(hash));
      String groups = pairs.replaceAll("((?:..:){7}..):", "$1 ");
      return new Trust(new String(pem, StandardCharsets.US_ASCII), groups);
    } catch (CertificateException e) {
      throw new IOException("the practice's own certificate can't be read", e);
    }
  }
}
