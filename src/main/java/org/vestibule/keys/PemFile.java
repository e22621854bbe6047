package org.vestibule.keys;

import java.io.IOException;
import java.io.StringReader;
import java.security.PrivateKey;
import java.security.cert.CertificateException;
import java.security.cert.X509Certificate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bouncycastle.asn1.pkcs.PrivateKeyInfo;
import org.bouncycastle.cert.X509CertificateHolder;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.jce.provider.BouncyCastleProvider;
import org.bouncycastle.openssl.PEMEncryptedKeyPair;
import org.bouncycastle.openssl.PEMKeyPair;
import org.bouncycastle.openssl.PEMParser;
import org.bouncycastle.openssl.jcajce.JcaPEMKeyConverter;
import org.bouncycastle.openssl.jcajce.JceOpenSSLPKCS8DecryptorProviderBuilder;
import org.bouncycastle.openssl.jcajce.JcePEMDecryptorProviderBuilder;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.pkcs.PKCS8EncryptedPrivateKeyInfo;
import org.bouncycastle.pkcs.PKCSException;

/**
 * Reads certificates and private keys from PEM text: PKCS#8 (RFC 7468 sections 10 and 11) and the
 * traditional RSA and EC forms, each also encrypted.
 */
final class PemFile {

  private final KeyBytes file;
  private final Optional<char[]> password;

  PemFile(KeyBytes file, Optional<char[]> password) {
    this.file = file;
    this.password = password;
  }

  /** All certificates, in the file's order. */
  List<X509Certificate> certificates() throws KeyRefusal {
    List<X509Certificate> found = new ArrayList<>();
    try {
      for (Object part : parts()) {
        if (part instanceof X509CertificateHolder holder) {
          found.add(new JcaX509CertificateConverter().getCertificate(holder));
        }
      }
    } catch (CertificateException broken) {
      throw damaged();
    }
    return found;
  }

  /** The first private key. */
  Optional<PrivateKey> key() throws KeyRefusal {
    for (Object part : parts()) {
      Optional<PrivateKeyInfo> info = keyInfo(part);
      if (info.isPresent()) {
        try {
          return Optional.of(new JcaPEMKeyConverter().getPrivateKey(info.get()));
        } catch (IOException broken) {
          throw new KeyRefusal(
              "the key in " + file.name() + " is of a kind that is not known here",
              "use an RSA key of 2048 bits or more, or an EC key on P-256 or P-384");
        }
      }
    }
    return Optional.empty();
  }

  private List<Object> parts() throws KeyRefusal {
    List<Object> parts = new ArrayList<>();
    try (PEMParser parser = new PEMParser(new StringReader(file.text()))) {
      for (Object part = parser.readObject(); part != null; part = parser.readObject()) {
        parts.add(part);
      }
    } catch (IOException | RuntimeException broken) {
      throw damaged();
    }
    return parts;
  }

  private KeyRefusal damaged() {
    return new KeyRefusal(
        file.name() + " holds a part that can't be read",
        "it was cut or changed; copy it again from where it was made");
  }

  private Optional<PrivateKeyInfo> keyInfo(Object part) throws KeyRefusal {
    try {
      if (part instanceof PrivateKeyInfo info) {
        return Optional.of(info);
      }
      if (part instanceof PEMKeyPair pair) {
        return Optional.of(pair.getPrivateKeyInfo());
      }
      if (part instanceof PEMEncryptedKeyPair encrypted) {
        return Optional.of(
            encrypted
                .decryptKeyPair(
                    new JcePEMDecryptorProviderBuilder()
                        .setProvider(new BouncyCastleProvider())
                        .build(needed()))
                .getPrivateKeyInfo());
      }
      if (part instanceof PKCS8EncryptedPrivateKeyInfo encrypted) {
        return Optional.of(
            encrypted.decryptPrivateKeyInfo(
                new JceOpenSSLPKCS8DecryptorProviderBuilder()
                    .setProvider(new BouncyCastleProvider())
                    .build(needed())));
      }
      return Optional.empty();
    } catch (IOException | PKCSException | OperatorCreationException wrong) {
      throw new KeyRefusal(
          "the password does not open the key in " + file.name(),
          "put the right password into the first line of the password file");
    }
  }

  private char[] needed() throws KeyRefusal {
    return password.orElseThrow(
        () ->
            new KeyRefusal(
                "the key in " + file.name() + " is encrypted and no password is given",
                "name a password file in the settings"));
  }
}
