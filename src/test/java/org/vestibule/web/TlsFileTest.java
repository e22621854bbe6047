package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;
import org.vestibule.base.Outcome;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Settings;
import org.vestibule.flow.TestHome;
import org.vestibule.flow.WebRules;
import org.vestibule.keys.Passwords;
import org.vestibule.keys.TlsFiles;

/** TLS by a certificate and key that the practice got elsewhere; here OpenSSL makes them. */
class TlsFileTest {

  @TempDir private Path home;
  private Practice practice;
  private Path tls;

  @BeforeEach
  void open() throws Exception {
    // Certificates are made for today.
    practice =
        Practice.open(home, Settings.defaults(home, TestHome.ZONE), Clock.systemUTC(), true)
            .orThrow();
    practice
        .store()
        .ledger()
        .accounts()
        .add("chair", "staff", Passwords.hash("seven slow barges pass".toCharArray()), "A. Finch");
    tls = Files.createDirectory(home.resolve("elsewhere"));
    ExternalTool.Result made =
        ExternalTool.require("openssl", "openssl")
            .run(
                "req",
                "-x509",
                "-newkey",
                "rsa:2048",
                "-nodes",
                "-days",
                "2",
                "-subj",
                "/CN=photos.example",
                "-addext",
                "subjectAltName=IP:127.0.0.1,DNS:photos.example",
                "-keyout",
                tls.resolve("key.pem").toString(),
                "-out",
                tls.resolve("own-issuer.pem").toString());
    assertThat(made.exitCode()).as(made.errors()).isZero();
  }

  @AfterEach
  void close() throws Exception {
    practice.close();
  }

  private Outcome<Server> start(Optional<Path> key) throws Exception {
    TlsFiles files =
        new TlsFiles(
            Optional.of(tls.resolve("own-issuer.pem")), key, Optional.empty(), Optional.empty());
    return ServerStart.start(
        practice,
        new WebRules(
            "127.0.0.1",
            0,
            List.of(),
            WebRules.Tls.FILE,
            files,
            "",
            WebRules.DEFAULT.idle(),
            WebRules.DEFAULT.longest()),
        said -> {},
        failure -> {
          throw new AssertionError(failure);
        });
  }

  @Test
  void itIsServedByTheGivenCertificate() throws Exception {
    try (Server server = start(Optional.of(tls.resolve("key.pem"))).orThrow()) {
      HttpResponse<byte[]> answer = TrustingCaller.get(tls, server.address() + "/sign-in");
      assertThat(answer.statusCode()).isEqualTo(200);
      assertThat(answer.sslSession().orElseThrow().getProtocol()).isIn("TLSv1.3", "TLSv1.2");
      assertThat(answer.headers().firstValue("Set-Cookie").orElseThrow())
          .startsWith("__Host-vestibule=")
          .contains("Secure");
      // There is no certificate of our own making to be trusted.
      assertThat(Caller.text(TrustingCaller.get(tls, server.address() + "/trust")))
          .contains("This server has no certificate that it made itself");
    }
    assertThat(home.resolve("tls")).doesNotExist();
  }

  @Test
  void withoutItsKeyItIsNotServed() throws Exception {
    Outcome<Server> refused = start(Optional.of(tls.resolve("nothing.pem")));
    assertThat(refused).isInstanceOf(Outcome.Refused.class);
    assertThat(((Outcome.Refused<Server>) refused).sentence())
        .contains("nothing.pem")
        .doesNotContain(home.toString());
  }
}
