package org.vestibule.keys;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.PrivateKey;
import java.security.cert.Certificate;
import java.security.cert.X509Certificate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/** Reads a key with its certificates, or trusted certificates, from PKCS#12 (RFC 7292). */
final class Pkcs12File {

  private final KeyBytes file;
  private final char[] password;
  private final KeyStore store;

  /** Opens the file; without a password the empty one is tried. */
  Pkcs12File(KeyBytes file, Optional<char[]> password) throws KeyRefusal {
    this.file = file;
    this.password = password.orElse(new char[0]);
    try {
      store = KeyStore.getInstance("PKCS12");
      store.load(new ByteArrayInputStream(file.bytes()), this.password);
    } catch (IOException | GeneralSecurityException wrong) {
      throw password.isEmpty()
          ? new KeyRefusal(
              file.name() + " is encrypted or damaged and no password is given",
              "name a password file in the settings")
          : new KeyRefusal(
              "the password does not open " + file.name(),
              "put the right password into the first line of the password file");
    }
  }

  /** The first key with its chain. */
  Optional<Identity> identity() throws KeyRefusal {
    try {
      for (String alias : Collections.list(store.aliases())) {
        Certificate[] chain = store.getCertificateChain(alias);
        if (store.isKeyEntry(alias) && chain != null && chain.length > 0) {
          return Optional.of(
              new Identity(
                  (PrivateKey) store.getKey(alias, password),
                  Arrays.stream(chain).map(X509Certificate.class::cast).toList()));
        }
      }
      return Optional.empty();
    } catch (GeneralSecurityException | ClassCastException wrong) {
      throw new KeyRefusal(
          "the key in " + file.name() + " can't be read with the password given",
          "give the key the same password as the file, or use PEM");
    }
  }

  /** Certificates without a key. */
  List<X509Certificate> certificates() throws KeyRefusal {
    List<X509Certificate> found = new ArrayList<>();
    try {
      for (String alias : Collections.list(store.aliases())) {
        if (store.isCertificateEntry(alias)
            && store.getCertificate(alias) instanceof X509Certificate certificate) {
          found.add(certificate);
        }
      }
    } catch (GeneralSecurityException broken) {
      throw new KeyRefusal(file.name() + " can't be read", "have it written again, or use PEM");
    }
    return found;
  }
}
