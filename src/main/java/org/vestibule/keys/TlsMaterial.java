package org.vestibule.keys;

import java.io.IOException;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.security.cert.X509Certificate;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManagerFactory;
import org.jspecify.annotations.Nullable;

/** What the files hold, made into the JDK's context. */
record TlsMaterial(Optional<Identity> identity, Optional<List<X509Certificate>> trusted) {

  static TlsMaterial read(TlsFiles files, Instant now) throws KeyRefusal {
    Optional<char[]> password =
        files.passwordFile().isPresent()
            ? Optional.of(KeyBytes.password(files.passwordFile().get()))
            : Optional.empty();
    if (files.identity().isEmpty() && files.key().isPresent()) {
      throw new KeyRefusal(
          "a key is given but no certificate", "name the certificate that belongs to the key");
    }
    Optional<Identity> identity = Optional.empty();
    if (files.identity().isPresent()) {
      KeyBytes certificates = KeyBytes.read(files.identity().get());
      Optional<KeyBytes> key =
          files.key().isPresent()
              ? Optional.of(KeyBytes.read(files.key().get()))
              : Optional.empty();
      identity = Optional.of(new IdentityReader(certificates, key, password).read(now));
    }
    return new TlsMaterial(
        identity,
        files.trusted().isPresent()
            ? Optional.of(trusted(files.trusted().get(), password, now))
            : Optional.empty());
  }

  private static List<X509Certificate> trusted(Path path, Optional<char[]> password, Instant now)
      throws KeyRefusal {
    KeyBytes file = KeyBytes.read(path);
    if (!file.isPem() && !file.looksLikePkcs12()) {
      throw file.unknownForm();
    }
    List<X509Certificate> found =
        file.isPem()
            ? new PemFile(file, password).certificates()
            : new Pkcs12File(file, password).certificates();
    if (found.isEmpty()) {
      throw new KeyRefusal(
          file.name() + " holds no certificate to trust",
          "give the certificate of the other side, or of who issued it, as PEM");
    }
    if (found.stream().allMatch(c -> now.isAfter(c.getNotAfter().toInstant()))) {
      throw new KeyRefusal(
          "every certificate in " + file.name() + " has ended",
          "get the other side's current certificate");
    }
    return found;
  }

  SSLContext context() {
    try {
      SSLContext context = SSLContext.getInstance("TLS");
      KeyManagerFactory keys = KeyManagerFactory.getInstance("PKIX");
      char[] inMemory = new char[0];
      keys.init(keyStore(inMemory), inMemory);
      TrustManagerFactory trust = TrustManagerFactory.getInstance("PKIX");
      trust.init(trustStore());
      context.init(keys.getKeyManagers(), trust.getTrustManagers(), null);
      return context;
    } catch (GeneralSecurityException | IOException broken) {
      throw new IllegalStateException("the Java runtime offers no TLS", broken);
    }
  }

  private KeyStore keyStore(char[] password) throws GeneralSecurityException, IOException {
    KeyStore store = empty();
    if (identity.isPresent()) {
      Certificate[] chain = identity.get().chain().toArray(new Certificate[0]);
      store.setKeyEntry("own", identity.get().key(), password, chain);
    }
    return store;
  }

  private @Nullable KeyStore trustStore() throws GeneralSecurityException, IOException {
    if (trusted.isEmpty()) {
      return null;
    }
    KeyStore store = empty();
    int number = 0;
    for (X509Certificate certificate : trusted.get()) {
      store.setCertificateEntry("trusted" + number++, certificate);
    }
    return store;
  }

  private static KeyStore empty() throws GeneralSecurityException, IOException {
    KeyStore store = KeyStore.getInstance("PKCS12");
    store.load(null, null);
    return store;
  }
}
