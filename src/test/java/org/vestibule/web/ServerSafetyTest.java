package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.base.Outcome;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Settings;
import org.vestibule.flow.TestHome;
import org.vestibule.flow.WebRules;
import org.vestibule.forward.MovingClock;
import org.vestibule.keys.Passwords;
import org.vestibule.keys.TlsFiles;

/** Who gets in, for how long, and by which name. */
class ServerSafetyTest {

  private static final String PASSWORD = "seven slow barges pass";
  private static final Instant START = Instant.parse("2026-03-14T06:00:00Z");

  @TempDir Path home;

  private final MovingClock clock = new MovingClock(START);
  private final List<String> said = new ArrayList<>();
  private Practice practice;
  private Server server;

  @BeforeEach
  void open() throws Exception {
    Settings settings = Settings.defaults(home, TestHome.ZONE);
    practice = Practice.open(home, settings, clock, true).orThrow();
    server = start(WebRules.DEFAULT.at(0)).orThrow();
  }

  @AfterEach
  void close() throws Exception {
    server.close();
    practice.close();
  }

  private Outcome<Server> start(WebRules rules) throws Exception {
    return ServerStart.start(
        practice,
        rules,
        said::add,
        failure -> {
          throw new AssertionError(failure);
        });
  }

  private void account(String name, Role role) {
    String hash = Passwords.hash(PASSWORD.toCharArray());
    practice.store().ledger().accounts().add(name, role.word(), hash, "A. Finch");
  }

  private static String cookie(HttpResponse<byte[]> response) {
    String header = response.headers().firstValue("Set-Cookie").orElse("=;");
    return header.substring(header.indexOf('=') + 1, header.indexOf(';'));
  }

  private Caller stranger() throws Exception {
    return new Caller(server, cookie(new Caller(server, "").get("/sign-in")));
  }

  private HttpResponse<byte[]> signIn(String name, String password) throws Exception {
    return stranger().post("/sign-in", Map.of("name", name, "password", password, "then", "/who"));
  }

  @Test
  void theOpeningLinkLetsInOnceAndAnotherOneIsPrinted() throws Exception {
    String link = server.openingLink();
    String secret = link.substring(link.indexOf('#') + 1);
    assertThat(secret).hasSize(43);
    Caller stranger = stranger();
    assertThat(stranger.post("/open", Map.of("secret", "x".repeat(43))).statusCode())
        .isEqualTo(403);
    HttpResponse<byte[]> opened = stranger.post("/open", Map.of("secret", secret, "then", "/who"));
    assertThat(opened.statusCode()).isEqualTo(303);
    assertThat(opened.headers().firstValue("Location")).contains("/who");
    assertThat(new Caller(server, cookie(opened)).get("/").statusCode()).isEqualTo(200);
    assertThat(stranger().post("/open", Map.of("secret", secret)).statusCode()).isEqualTo(403);
    assertThat(said).hasSize(2);
    assertThat(said.get(1)).isEqualTo(server.openingLink()).isNotEqualTo(link);
  }

  @Test
  void whereThereAreAccountsTheOpeningLinkLetsNobodyIn() throws Exception {
    String link = server.openingLink();
    account("chair", Role.STAFF);
    assertThat(server.openingLink()).isEmpty();
    String secret = link.substring(link.indexOf('#') + 1);
    HttpResponse<byte[]> refused = stranger().post("/open", Map.of("secret", secret));
    assertThat(refused.statusCode()).isEqualTo(429);
    assertThat(cookie(refused)).isEmpty();
  }

  /** Whoever came in before there were names is nobody as soon as there are, and stays nobody. */
  @Test
  void theFirstAccountEndsWhatTheOpeningLinkBegan() throws Exception {
    String link = server.openingLink();
    String secret = link.substring(link.indexOf('#') + 1);
    Caller byLink = new Caller(server, cookie(stranger().post("/open", Map.of("secret", secret))));
    assertThat(byLink.get("/").statusCode()).isEqualTo(200);
    String phone = SampleSite.sittings(practice).begin("", Role.PHONE, "1", "A. Finch");
    account("chair", Role.STAFF);
    assertThat(byLink.get("/").statusCode()).isEqualTo(401);
    // One that was being let in just then.
    String late = SampleSite.sittings(practice).begin("", Role.ADMINISTRATOR, "", "");
    assertThat(new Caller(server, late).get("/").statusCode()).isEqualTo(401);
    // A phone's page is about one visit, and was opened by a person: it stays.
    assertThat(new Caller(server, phone).get("/phone/visit").statusCode()).isEqualTo(410);
    practice.store().ledger().accounts().remove("chair", "A. Finch");
    assertThat(byLink.get("/").statusCode()).isEqualTo(401);
  }

  @Test
  void aPasswordLetsInWithAFreshSecretOfWhichTheLedgerHoldsTheHashAlone() throws Exception {
    account("chair", Role.STAFF);
    Caller stranger = stranger();
    HttpResponse<byte[]> in =
        stranger.post(
            "/sign-in", Map.of("name", "chair", "password", PASSWORD, "then", "//evil.example"));
    assertThat(in.headers().firstValue("Location")).contains("/");
    String header = in.headers().firstValue("Set-Cookie").orElseThrow();
    assertThat(header).contains("HttpOnly", "SameSite=Strict", "Path=/").doesNotContain("Expires");
    String secret = cookie(in);
    assertThat(practice.store().ledger().sessions().find(secret)).isEmpty();
    assertThat(practice.store().ledger().sessions().find(Secrets.mark(secret))).isPresent();
    Caller caller = new Caller(server, secret);
    assertThat(caller.get("/").statusCode()).isEqualTo(200);
    assertThat(caller.post("/sign-out", Map.of()).statusCode()).isEqualTo(303);
    assertThat(caller.get("/").statusCode()).isEqualTo(401);
  }

  @Test
  void afterFiveWrongPasswordsTheNameWaitsTenMinutes() throws Exception {
    account("chair", Role.STAFF);
    for (int i = 0; i < 5; i++) {
      assertThat(signIn("chair", "wrong").statusCode()).isEqualTo(403);
    }
    HttpResponse<byte[]> waits = signIn("chair", PASSWORD);
    assertThat(waits.statusCode()).isEqualTo(429);
    assertThat(Caller.text(waits)).contains("There were too many attempts.");
    clock.move(Duration.ofMinutes(11));
    assertThat(signIn("chair", PASSWORD).statusCode()).isEqualTo(303);
  }

  @Test
  void aSittingEndsWithoutUseAndInAnyCaseAndWithTheAccount() throws Exception {
    account("chair", Role.STAFF);
    Caller caller = new Caller(server, cookie(signIn("chair", PASSWORD)));
    for (int i = 0; i < 29; i++) {
      clock.move(Duration.ofMinutes(25));
      int expected = i < 28 ? 200 : 401;
      assertThat(caller.get("/").statusCode()).as("after " + (i + 1) * 25).isEqualTo(expected);
    }
    Caller second = new Caller(server, cookie(signIn("chair", PASSWORD)));
    clock.move(Duration.ofMinutes(31));
    assertThat(second.get("/").statusCode()).isEqualTo(401);
    Caller third = new Caller(server, cookie(signIn("chair", PASSWORD)));
    practice.store().ledger().accounts().remove("chair", "A. Finch");
    assertThat(third.get("/").statusCode()).isEqualTo(401);
  }

  @Test
  void whoSitsThereIsSaidOnceAndChangedAtWill() throws Exception {
    account("chair", Role.STAFF);
    Caller caller = new Caller(server, cookie(signIn("chair", PASSWORD)));
    assertThat(Caller.text(caller.get("/"))).contains("Say who you are");
    assertThat(caller.post("/who", Map.of("person", "B. Rook", "then", "/")).statusCode())
        .isEqualTo(303);
    assertThat(Caller.text(caller.get("/"))).contains("B. Rook", "Somebody else?");
    caller.post("/who", Map.of("person", "C. <Heron>", "then", "/"));
    assertThat(Caller.text(caller.get("/"))).contains("C. &lt;Heron&gt;").doesNotContain("<Heron>");
    assertThat(caller.post("/who", Map.of("person", " ")).statusCode()).isEqualTo(400);
  }

  /** Fetch Metadata Request Headers, W3C: what a request is for. */
  @Test
  void aPictureAskedForWithoutASessionSetsNone() throws Exception {
    Caller nobody = new Caller(server, "");
    HttpResponse<byte[]> picture =
        nobody.send(nobody.request("/picture/x").header("Sec-Fetch-Dest", "image").GET());
    assertThat(picture.statusCode()).isEqualTo(401);
    assertThat(picture.headers().firstValue("Set-Cookie")).isEmpty();
    HttpResponse<byte[]> page =
        nobody.send(nobody.request("/").header("Sec-Fetch-Dest", "document").GET());
    assertThat(page.headers().firstValue("Set-Cookie")).isPresent();
  }

  @Test
  void whatIsTooLargeOrOfUnknownLengthIsNotRead() throws Exception {
    Caller stranger = stranger();
    HttpResponse<byte[]> large =
        stranger.post("/sign-in", Map.of("name", "x".repeat(70_000), "password", ""));
    assertThat(large.statusCode()).isEqualTo(413);
    HttpResponse<byte[]> unknown =
        stranger.send(
            stranger
                .request("/sign-in")
                .header("Content-Type", Caller.FORM)
                .POST(BodyPublishers.ofInputStream(() -> new ByteArrayInputStream(new byte[9]))));
    assertThat(unknown.statusCode()).isEqualTo(411);
  }

  @Test
  void beyondThisMachineItIsServedOnlyWithTlsAndAccounts() throws Exception {
    assertThat(start(rules("0.0.0.0", WebRules.Tls.NONE)))
        .isEqualTo(
            Outcome.refused(
                "the pages would be sent to other machines without encryption",
                "set tls = \"own\" under [web] in vestibule.toml, or leave address at 127.0.0.1"));
    assertThat(start(rules("0.0.0.0", WebRules.Tls.OWN)))
        .isEqualTo(
            Outcome.refused(
                "other machines could open the pages, and nobody has a name and a password yet",
                "run \"vestibule people add\" first, for an administrator"));
    assertThat(start(rules("192.168.1.5", WebRules.Tls.PROXY)))
        .isEqualTo(
            Outcome.refused(
                "with a proxy in front, other machines could still ask past it",
                "leave address at 127.0.0.1 under [web], and let the proxy run on this machine"));
    assertThat(start(rules("127.0.0.1", WebRules.Tls.PROXY)))
        .isEqualTo(
            Outcome.refused(
                "other machines could open the pages, and nobody has a name and a password yet",
                "run \"vestibule people add\" first, for an administrator"));
    account("chair", Role.STAFF);
    assertThat(start(rules("127.0.0.1", WebRules.Tls.PROXY)))
        .isEqualTo(
            Outcome.refused(
                "behind a proxy browsers call the server by a name, and none is settled",
                "write names = [\"photos.example\"] under [web] in vestibule.toml"));
    assertThat(start(WebRules.DEFAULT.at(server.port())))
        .isEqualTo(
            Outcome.refused(
                Outcome.Kind.BUSY,
                "port " + server.port() + " at 127.0.0.1 is taken, or is not this machine's",
                "another Vestibule may be running; else set another port or address under [web]"));
  }

  private static WebRules rules(String address, WebRules.Tls tls) {
    return new WebRules(
        address,
        0,
        List.of(),
        tls,
        TlsFiles.NONE,
        "",
        Duration.ofMinutes(30),
        Duration.ofHours(12));
  }

  /** RFC 9110, 4.2.2: what the other end's certificate has to be for. */
  @Test
  void withACertificateOfItsOwnItIsServedByTls() throws Exception {
    account("chair", Role.STAFF);
    try (Server secure = start(rules("127.0.0.1", WebRules.Tls.OWN)).orThrow()) {
      assertThat(secure.address()).isEqualTo("https://127.0.0.1:" + secure.port());
      HttpResponse<byte[]> answer =
          TrustingCaller.get(home.resolve("tls"), secure.address() + "/sign-in");
      assertThat(answer.statusCode()).isEqualTo(200);
      assertThat(answer.headers().firstValue("Set-Cookie").orElseThrow())
          .startsWith("__Host-vestibule=")
          .contains("Secure");
    }
  }
}
