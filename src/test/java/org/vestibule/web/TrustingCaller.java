package org.vestibule.web;

import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyStore;
import java.security.cert.CertificateFactory;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManagerFactory;
import org.vestibule.keys.SelfMade;

/** Asks by TLS as a device that trusts the practice's own issuer, and checks names. */
final class TrustingCaller {

  private TrustingCaller() {}

  static HttpResponse<byte[]> get(Path tlsFolder, String address) throws Exception {
    KeyStore trusted = KeyStore.getInstance("PKCS12");
    trusted.load(null, null);
    try (InputStream in = Files.newInputStream(SelfMade.issuer(tlsFolder))) {
      trusted.setCertificateEntry(
          "issuer", CertificateFactory.getInstance("X.509").generateCertificate(in));
    }
    TrustManagerFactory trust = TrustManagerFactory.getInstance("PKIX");
    trust.init(trusted);
    SSLContext context = SSLContext.getInstance("TLS");
    context.init(null, trust.getTrustManagers(), null);
    HttpClient client = HttpClient.newBuilder().sslContext(context).build();
    return client.send(
        HttpRequest.newBuilder(URI.create(address)).build(),
        HttpResponse.BodyHandlers.ofByteArray());
  }
}
