package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.base.Outcome;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Settings;
import org.vestibule.flow.TestHome;
import org.vestibule.flow.WebRules;
import org.vestibule.keys.Passwords;
import org.vestibule.keys.TlsFiles;

/** Behind a proxy on this machine, which ends TLS and says who asks. */
class ProxyTest {

  private static final String HEADER = "X-Forwarded-For";
  private static final String PASSWORD = "seven slow barges pass";

  @TempDir private Path home;
  private final List<String> said = new ArrayList<>();
  private Practice practice;
  private Server server;

  @BeforeEach
  void open() throws Exception {
    Settings settings = Settings.defaults(home, TestHome.ZONE);
    practice = Practice.open(home, settings, TestHome.CLOCK, true).orThrow();
    for (String name : List.of("chair", "desk")) {
      practice
          .store()
          .ledger()
          .accounts()
          .add(name, Role.STAFF.word(), Passwords.hash(PASSWORD.toCharArray()), "A. Finch");
    }
    server = start(HEADER).orThrow();
  }

  @AfterEach
  void close() throws Exception {
    server.close();
    practice.close();
  }

  private Outcome<Server> start(String header) throws Exception {
    return ServerStart.start(
        practice,
        new WebRules(
            "127.0.0.1",
            0,
            List.of("photos.example"),
            WebRules.Tls.PROXY,
            TlsFiles.NONE,
            header,
            WebRules.DEFAULT.idle(),
            WebRules.DEFAULT.longest()),
        said::add,
        failure -> {
          throw new AssertionError(failure);
        });
  }

  @Test
  void withoutTheHeaderThatSaysWhoAsksItIsNotServed() throws Exception {
    assertThat(start(""))
        .isEqualTo(
            Outcome.refused(
                "behind a proxy everybody would be one address, and one stranger's wrong passwords"
                    + " would lock all others out",
                "write proxy-header = \"X-Forwarded-For\" under [web] in vestibule.toml, or the"
                    + " header in which your proxy says who asks"));
  }

  /** A sign-in that comes from this address, as the proxy says behind what others wrote there. */
  private HttpResponse<byte[]> signIn(String from, String name, String password) throws Exception {
    String secret = new Secrets(new SecureRandom()).next();
    Caller caller = new Caller(server, "");
    String body =
        "form=" + Secrets.csrf(secret) + "&name=" + name + "&password=" + Caller.encoded(password);
    return caller.send(
        caller
            .request("/sign-in")
            .header("Cookie", "__Host-vestibule=" + secret)
            .header(HEADER, "198.51.100.7, " + from)
            .header("Content-Type", Caller.FORM)
            .POST(BodyPublishers.ofString(body)));
  }

  /** Addresses for documentation: RFC 5737. */
  @Test
  void oneAddressesWrongPasswordsLockNoOtherAddressOut() throws Exception {
    for (int i = 0; i < 20; i++) {
      assertThat(signIn("203.0.113.5", "nobody" + i, "wrong").statusCode()).isEqualTo(403);
    }
    assertThat(signIn("203.0.113.5", "chair", PASSWORD).statusCode()).isEqualTo(429);
    HttpResponse<byte[]> in = signIn("203.0.113.6", "desk", PASSWORD);
    assertThat(in.statusCode()).isEqualTo(303);
    assertThat(in.headers().firstValue("Set-Cookie").orElseThrow())
        .startsWith("__Host-vestibule=")
        .contains("Secure", "HttpOnly", "SameSite=Strict");
    assertThat(server.address()).isEqualTo("https://photos.example");
  }
}
