package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Every route as every role, without a session, with an ended one, with a wrong proof, with wrong
 * values: the right status, never a stack trace, never a photograph to somebody who may not see it.
 */
class RouteWalkTest {

  private static final SampleSite SITE = SampleSite.shared();
  private static final List<String> TRACES =
      List.of("Exception", "\tat ", "org.vestibule", "io.javalin", "org.eclipse", ".java:");

  private static Server server;
  private static List<Route> routes;
  private static RouteExamples examples;

  @BeforeAll
  static void start() throws IOException {
    server = SITE.serve();
    routes =
        Routes.of(
            new Site(SITE.practice(), SITE.practice().settings().web(), SampleSite.CLOCK, s -> {}));
    examples = new RouteExamples(SITE);
  }

  @AfterAll
  static void stop() {
    server.close();
  }

  private static HttpResponse<byte[]> ask(Route route, String secret, Optional<String> proof)
      throws Exception {
    Caller caller = new Caller(server, secret);
    HttpRequest.Builder request = caller.request(examples.address(route));
    proof.ifPresent(value -> request.header("X-Vestibule-Form", value));
    if (!route.isSafe()) {
      request.header("Content-Type", Caller.FORM);
    }
    return caller.send(
        request.method(
            route.method(),
            route.isSafe() ? BodyPublishers.noBody() : BodyPublishers.ofString("")));
  }

  private static void safe(HttpResponse<byte[]> response, String what) {
    String type = response.headers().firstValue("Content-Type").orElse("");
    if (!type.startsWith("image/jpeg")) {
      String text = Caller.text(response);
      TRACES.forEach(trace -> assertThat(text).as(what).doesNotContain(trace));
    }
    Headers.all().keySet().stream()
        .filter(name -> !name.equals("Cache-Control"))
        .forEach(name -> assertThat(response.headers().firstValue(name)).as(what).isPresent());
  }

  private static Optional<String> proof(String secret) {
    return secret.isEmpty() ? Optional.empty() : Optional.of(Secrets.csrf(secret));
  }

  private static boolean isPicture(HttpResponse<byte[]> response) {
    byte[] body = response.body();
    return body.length > 2 && (body[0] & 0xFF) == 0xFF && (body[1] & 0xFF) == 0xD8;
  }

  @Test
  void whoMayNotIsRefusedAndWhoMayIsAnswered() throws Exception {
    for (Route route : routes) {
      for (Role role : Role.values()) {
        String secret =
            role == Role.NOBODY ? new Secrets(new SecureRandom()).next() : SITE.session(role);
        HttpResponse<byte[]> response = ask(route, secret, Optional.of(Secrets.csrf(secret)));
        String what = route.method() + " " + route.path() + " as " + role;
        safe(response, what);
        if (!route.roles().contains(role)) {
          assertThat(response.statusCode()).as(what).isEqualTo(role == Role.NOBODY ? 401 : 403);
          assertThat(isPicture(response)).as(what).isFalse();
        } else {
          assertThat(response.statusCode()).as(what).isNotIn(401, 404, 405, 500, 503);
        }
      }
    }
  }

  @Test
  void withoutASessionOrWithAnEndedOneNobodyIsLetIn() throws Exception {
    Sittings sittings = SITE.sittings();
    String ended = sittings.begin("staff", Role.STAFF, "", "B. Rook", Duration.ZERO);
    String left = sittings.begin("staff", Role.STAFF, "", "B. Rook");
    sittings.end(sittings.visitor(left));
    for (Route route : routes) {
      if (route.roles().contains(Role.NOBODY)) {
        continue;
      }
      for (String secret : List.of("", "x".repeat(43), ended, left, "a".repeat(5000))) {
        HttpResponse<byte[]> response = ask(route, secret, proof(secret));
        String what =
            route.method() + " " + route.path() + " with " + secret.length() + " characters";
        assertThat(response.statusCode()).as(what).isEqualTo(401);
        assertThat(isPicture(response)).as(what).isFalse();
        safe(response, what);
      }
    }
  }

  @Test
  void whatChangesSomethingNeedsTheProofOfTheSameSession() throws Exception {
    for (Route route : routes) {
      if (route.isSafe()) {
        continue;
      }
      String secret = SITE.session(mayAsk(route));
      String other = SITE.session(mayAsk(route));
      for (Optional<String> proof :
          List.of(
              Optional.<String>empty(),
              Optional.of(""),
              Optional.of("wrong"),
              Optional.of(Secrets.csrf(other)))) {
        HttpResponse<byte[]> response = ask(route, secret, proof);
        assertThat(response.statusCode())
            .as(route.method() + " " + route.path() + " with " + proof)
            .isEqualTo(403);
      }
    }
  }

  /** The one with the most rights that may ask at all. */
  private static Role mayAsk(Route route) {
    return Stream.of(Role.ADMINISTRATOR, Role.STAFF, Role.PHONE, Role.REFERRER)
        .filter(route.roles()::contains)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void valuesThatMeanNothingAreSaidToBeNowhere() throws Exception {
    List<String> values =
        new ArrayList<>(List.of("x", "..", "%00", "%2e%2e%2f", "0", "%27--", "%3Cb%3E"));
    values.add(SITE.filed().get(0).hash());
    values.add(SITE.filed().get(0).id());
    values.add("A".repeat(22));
    values.add("9".repeat(4000));
    for (Route route : routes) {
      if (!route.isSafe() || !route.path().contains("{")) {
        continue;
      }
      Caller caller = new Caller(server, SITE.session(mayAsk(route)));
      for (String value : values) {
        String path = route.path().replaceAll("\\{[a-z]+}", Matcher.quoteReplacement(value));
        HttpResponse<byte[]> response = caller.get(path);
        assertThat(response.statusCode()).as(path).isIn(400, 404);
        safe(response, path);
      }
    }
  }

  @Test
  void strangeQueriesAndHeadersGiveNoTrace() throws Exception {
    Caller caller = new Caller(server, SITE.session(Role.STAFF));
    for (String query :
        List.of(
            "?tooth=99&tooth=x&view=nothing&page=-1&order=?&notation=x",
            "?q=" + Caller.encoded("\"'<script>alert(1)</script> or"),
            "?from=yesterday",
            "?q=" + "a+".repeat(1500),
            "?q=%ff%fe&tooth=%00",
            "?page=999999999999")) {
      for (String path : List.of("/", "/results", "/who")) {
        HttpResponse<byte[]> response = caller.get(path + query);
        assertThat(response.statusCode()).as(path + query).isIn(200, 400, 414, 431);
        assertThat(Caller.text(response)).doesNotContain("<script>alert");
        safe(response, path + query);
      }
    }
    HttpResponse<byte[]> odd =
        caller.send(
            caller
                .request("/")
                .header("Accept-Language", ";;q=zz,,")
                .header("X-Forwarded-For", "1.2.3.4")
                .header("If-None-Match", "*"));
    assertThat(odd.statusCode()).isEqualTo(200);
  }

  @Test
  void whatIsNotInTheTableIsNowhere() throws Exception {
    Caller caller = new Caller(server, SITE.session(Role.ADMINISTRATOR));
    for (String path :
        List.of(
            "/nothing",
            "/photograph",
            "/picture/",
            "/assets/../look.css",
            "/WEB-INF/web.xml",
            "/assets/Words.class")) {
      HttpResponse<byte[]> response = caller.get(path);
      assertThat(response.statusCode()).as(path).isIn(400, 404);
      safe(response, path);
    }
    for (Route route : routes) {
      for (String method : List.of("PUT", "DELETE", "PATCH", "TRACE", "OPTIONS", "HEAD", "BREW")) {
        if (routes.stream()
            .anyMatch(r -> r.path().equals(route.path()) && r.method().equals(method))) {
          continue;
        }
        HttpResponse<byte[]> response =
            caller.send(
                caller.request(examples.address(route)).method(method, BodyPublishers.noBody()));
        if (!method.equals("HEAD")) {
          assertThat(response.statusCode())
              .as(method + " " + route.path())
              .isIn(400, 404, 405, 501);
        }
        safe(response, method + " " + route.path());
      }
    }
  }

  /** What is no request at all is answered by the server itself, in a plain sentence. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "GET /?%zz=1 HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n",
        "GET /%2e%2e/%2e%2e/ledger.sqlite HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n",
        "GET //open/..;/picture HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n",
        "GET / HTTP/1.1\r\n\r\n",
        "nonsense\r\n\r\n",
        "GET / HTTP/9.9\r\nHost: 127.0.0.1\r\n\r\n",
        "GET / HTTP/1.1\r\nHost: evil.example\r\n\r\n",
        "GET / HTTP/1.1\r\nHost: 127.0.0.1\r\nCookie: \u0001=;;\r\n\r\n",
        "POST /sign-in HTTP/1.1\r\nHost: 127.0.0.1\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n",
        "POST /sign-in HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Length: 99999999999\r\n\r\n",
        "POST /sign-in HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Length: -1\r\n\r\n"
      })
  void whatIsNoProperRequestGetsASentence(String request) throws Exception {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), server.port())) {
      socket.setSoTimeout(10_000);
      socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
      socket.shutdownOutput();
      String answer =
          new String(socket.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
      assertThat(answer).matches("(?s)HTTP/1.1 4\\d\\d .*|HTTP/1.1 505 .*");
      TRACES.forEach(trace -> assertThat(answer).doesNotContain(trace));
      assertThat(answer.toLowerCase(Locale.ROOT)).doesNotContain("jetty", "javalin");
    }
  }

  @AfterEach
  void noDefectWasMet() {
    assertThat(SITE.defects()).isEmpty();
  }
}
