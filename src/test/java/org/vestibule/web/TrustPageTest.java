package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.security.cert.Certificate;
import java.security.cert.CertificateFactory;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.flow.WebRules;

/** The one step by which a phone learns to trust the practice's certificate. */
class TrustPageTest {

  private static final HttpClient HTTP = HttpClient.newHttpClient();

  @TempDir private static Path home;
  private static SampleSite site;
  private static Server server;
  private static String plain;

  @BeforeAll
  static void start() throws Exception {
    site = SampleSite.own(home);
    site.visitsOfToday();
    WebRules rules =
        new WebRules(
            "127.0.0.1",
            0,
            List.of("localhost"),
            WebRules.Tls.OWN,
            WebRules.DEFAULT.files(),
            "",
            WebRules.DEFAULT.idle(),
            WebRules.DEFAULT.longest());
    server = ServerStart.start(site.practice(), rules, said -> {}, site.defects()::add).orThrow();
    String trust = server.trustAddress();
    plain = trust.substring(0, trust.length() - "/trust".length());
  }

  @AfterAll
  static void stop() throws Exception {
    server.close();
    site.practice().close();
  }

  private static HttpResponse<byte[]> get(String path) throws Exception {
    return HTTP.send(
        HttpRequest.newBuilder(URI.create(plain + path)).build(),
        HttpResponse.BodyHandlers.ofByteArray());
  }

  @Test
  void theCertificateIsHadPlainlyAndItsFingerprintIsTheOneOnTheScreen() throws Exception {
    HttpResponse<byte[]> file = get("/trust/vestibule.crt");
    assertThat(file.headers().firstValue("Content-Type")).hasValue("application/x-x509-ca-cert");
    Certificate certificate =
        CertificateFactory.getInstance("X.509")
            .generateCertificate(new ByteArrayInputStream(file.body()));
    // What devices show: SHA-256 of the certificate's DER form, in pairs.
    String fingerprint =
        HexFormat.ofDelimiter(":")
            .formatHex(MessageDigest.getInstance("SHA-256").digest(certificate.getEncoded()))
            .toUpperCase(Locale.ROOT)
            .replaceAll("(.{23}):", "$1 ");
    assertThat(Caller.text(get("/trust"))).contains(fingerprint);
    // Only the practice's own screen counts; it is shown there, by TLS.
    HttpResponse<byte[]> signIn =
        TrustingCaller.get(home.resolve("tls"), server.address() + "/trust");
    assertThat(Caller.text(signIn)).contains(fingerprint);
    assertThat(Trust.read(home.resolve("tls/own-issuer.pem")).fingerprint()).isEqualTo(fingerprint);
  }

  @Test
  void nothingElseIsServedWithoutTls() throws Exception {
    String secret = new Secrets(new SecureRandom()).next();
    site.phonesPage(SampleSite.TODAY_ONE, secret);
    for (String path :
        List.of(
            "/",
            "/sign-in",
            "/open",
            "/phone",
            "/phone/visit",
            "/shared",
            "/trust/x",
            "/trust/",
            "/assets/phone.js",
            "/nothing",
            "//trust",
            "/trust/../sign-in")) {
      HttpResponse<byte[]> answer = get(path);
      assertThat(answer.statusCode()).as(path).isIn(400, 421);
    }
    assertThat(Caller.text(get("/phone")))
        .contains("Photographs are shown over a secure connection alone");
    for (String path : List.of("/phone", "/sign-in", "/language", "/trust")) {
      HttpResponse<byte[]> answer =
          HTTP.send(
              HttpRequest.newBuilder(URI.create(plain + path))
                  .header("Content-Type", Caller.FORM)
                  .POST(BodyPublishers.ofString("secret=" + secret))
                  .build(),
              HttpResponse.BodyHandlers.ofByteArray());
      assertThat(answer.statusCode()).as(path).isIn(405, 421);
    }
    assertThat(Map.copyOf(Headers.all())).containsKey("Content-Security-Policy");
  }

  @Test
  void theStepIsReadable() throws Exception {
    Browser browser = Browser.shared();
    browser.light();
    browser.size(360, 740);
    browser.driver().get(plain + "/trust");
    browser.until("document.querySelector('.fingerprint')");
    browser.look("trust");
    browser.size(720, 860);
    browser.glance("phone-trust");
    browser.size(1280, 900);
    // The practice's screen says where it is, and the fingerprint that counts.
    browser.driver().get(server.address() + "/assets/mark.svg");
    browser.driver().manage().deleteAllCookies();
    browser
        .driver()
        .manage()
        .addCookie(
            new org.openqa.selenium.Cookie.Builder("__Host-vestibule", site.session(Role.STAFF))
                .path("/")
                .isSecure(true)
                .build());
    browser.driver().get(server.address() + "/ways");
    browser.find("input[value=" + SampleSite.TODAY_ONE + "]").click();
    browser.enter("main .button");
    browser.until("document.querySelector('.way .trust')");
    assertThat(browser.find(".way .trust").getText())
        .contains(
            server.trustAddress(), Trust.read(home.resolve("tls/own-issuer.pem")).fingerprint());
    browser.look("way-trust");
  }
}
