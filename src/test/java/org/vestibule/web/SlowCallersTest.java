package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.store.ledger.PhoneLinkRow;

/** Whoever hangs on the line, others are answered. */
class SlowCallersTest {

  private static final String ELSEWHERE = "127.0.0.2";
  private static final String HERE = "127.0.0.1";

  /** Far more than the server has threads for. */
  private static final int MANY = 80;

  @TempDir private static Path home;
  private static SampleSite site;
  private static Server server;
  private final List<SlowSocket> slow = new ArrayList<>();

  @BeforeAll
  static void start() throws Exception {
    site = SampleSite.own(home);
    site.visitsOfToday();
    server = site.serve();
  }

  @AfterAll
  static void stop() throws Exception {
    server.close();
    site.practice().close();
  }

  @AfterEach
  void hangUp() throws Exception {
    for (SlowSocket one : slow) {
      one.close();
    }
    assertThat(site.defects()).isEmpty();
  }

  private SlowSocket from(String address) throws IOException {
    SlowSocket one = new SlowSocket(address, server.port());
    slow.add(one);
    return one;
  }

  private static String[] post(String path, String cookie, String body) {
    return new String[] {
      "POST " + path + " HTTP/1.1",
      "Host: 127.0.0.1",
      "Cookie: vestibule=" + cookie,
      "Content-Type: " + Caller.FORM,
      "Content-Length: 1000",
      "",
      body
    };
  }

  /** The answer; a test waits for none for ever. */
  private static HttpResponse<byte[]> within(Caller caller, HttpRequest.Builder request)
      throws Exception {
    return caller.send(request.timeout(Duration.ofSeconds(20)));
  }

  private List<SlowSocket> unanswered() throws IOException {
    List<SlowSocket> all = new ArrayList<>();
    for (SlowSocket one : slow) {
      if (one.isUnanswered()) {
        all.add(one);
      }
    }
    return all;
  }

  /** Waits for that, but not for ever. */
  private void untilUnanswered(int count) throws Exception {
    for (int i = 0; i < 200 && unanswered().size() > count; i++) {
      Thread.sleep(50);
    }
    assertThat(unanswered()).hasSize(count);
  }

  private void assertTheOthersWereToldToComeAgain(int hanging) throws IOException {
    List<SlowSocket> hang = unanswered();
    assertThat(hang).hasSize(hanging);
    for (SlowSocket one : slow) {
      if (!hang.contains(one)) {
        assertThat(one.status()).isEqualTo(503);
        // Seconds, RFC 9110, 10.2.3
        assertThat(one.headers()).contains("\r\nRetry-After: 2\r\n");
      }
    }
  }

  @Test
  void formsThatStrangersDoNotEndHoldNobodyElseUp() throws Exception {
    for (int i = 0; i < MANY; i++) {
      from(ELSEWHERE).say(post("/sign-in", site.secret(), "name="));
    }
    // All but a few are told to come again.
    untilUnanswered(AtOnce.OF_AN_ADDRESS);
    Caller staff = new Caller(server, site.session(Role.STAFF));
    assertThat(within(staff, staff.request("/").GET()).statusCode()).isEqualTo(200);
    String browser = site.secret();
    HttpResponse<byte[]> in =
        new Caller(server, browser)
            .post("/sign-in", Map.of("name", "staff", "password", SampleSite.PASSWORD));
    assertThat(in.statusCode()).isEqualTo(303);
    assertTheOthersWereToldToComeAgain(AtOnce.OF_AN_ADDRESS);
  }

  @Test
  void piecesThatOnePhoneDoesNotEndHoldNoOtherPhoneUp() throws Exception {
    PhoneLinkRow page = site.phonesPage(SampleSite.TODAY_ONE, site.secret());
    String secret = site.phone(page);
    Caller phone = new Caller(server, secret);
    String id = id(phone.post("/phone/files", Map.of("name", "a.jpg", "size", "900")));
    for (int i = 0; i < MANY; i++) {
      from(HERE)
          .say(
              "PUT /phone/files/" + id + "/from/0 HTTP/1.1",
              "Host: 127.0.0.1",
              "Cookie: vestibule=" + secret,
              "X-Vestibule-Form: " + Secrets.csrf(secret),
              "Content-Length: 900",
              "",
              "half of");
    }
    untilUnanswered(AtOnce.OF_A_SESSION);
    Caller other = new Caller(server, site.phone(page));
    HttpResponse<byte[]> begun =
        within(
            other,
            other
                .proved("/phone/files")
                .header("Content-Type", Caller.FORM)
                .POST(HttpRequest.BodyPublishers.ofString("name=b.jpg&size=3")));
    assertThat(begun.statusCode()).isEqualTo(200);
    HttpResponse<byte[]> piece =
        within(
            other,
            other
                .proved("/phone/files/" + id(begun) + "/from/0")
                .PUT(HttpRequest.BodyPublishers.ofByteArray(new byte[] {-1, -40, -1})));
    assertThat(Caller.text(piece)).contains("\"received\":3");
    assertTheOthersWereToldToComeAgain(AtOnce.OF_A_SESSION);
  }

  private static String id(HttpResponse<byte[]> response) {
    return Caller.text(response).replaceAll(".*\"id\":\"([0-9a-f]{32})\".*", "$1");
  }

  @Test
  void picturesThatOneBrowserDoesNotTakeHoldNoOtherUp() throws Exception {
    String secret = site.session(Role.READER);
    String picture = "GET /picture/" + site.key(site.filed().get(0)) + " HTTP/1.1\r\n";
    String request = picture + "Host: 127.0.0.1\r\nCookie: vestibule=" + secret + "\r\n\r\n";
    // So many on each line that their answers fit into no system's buffers.
    for (int i = 0; i < 26; i++) {
      from(HERE).say(request.repeat(150));
    }
    Caller staff = new Caller(server, site.session(Role.STAFF));
    for (int i = 0; i < 10; i++) {
      assertThat(within(staff, staff.request("/").GET()).statusCode()).isEqualTo(200);
    }
  }

  @Test
  void oneAddressHasOnlySoManyConnections() throws Exception {
    for (int i = 0; i < Connections.OF_AN_ADDRESS + 20; i++) {
      from(ELSEWHERE).say("GET /assets/mark.svg HTTP/1.1", "Host: 127.0.0.1", "", "");
    }
    int closed = 0;
    for (SlowSocket one : slow) {
      closed += one.status() == -1 ? 1 : 0;
    }
    assertThat(closed).isEqualTo(20);
    Caller stranger = new Caller(server, "");
    assertThat(within(stranger, stranger.request("/sign-in").GET()).statusCode()).isEqualTo(200);
    // Who goes makes room.
    for (SlowSocket one : slow) {
      one.close();
    }
    slow.clear();
    int status = -1;
    for (int i = 0; i < 200 && status == -1; i++) {
      Thread.sleep(50);
      status = from(ELSEWHERE).say("GET /sign-in HTTP/1.1", "Host: 127.0.0.1", "", "").status();
    }
    assertThat(status).isEqualTo(200);
  }

  /** RFC 9110, 15.5.9: the server did not receive the whole request in time. */
  @Test
  void aFormThatComesByTheByteIsEnded() throws Exception {
    SlowSocket one = from(HERE).say(post("/sign-in", site.secret(), "n"));
    int said = 0;
    while (one.isUnanswered() && said < 990) {
      Thread.sleep(50);
      one.say("x");
      said++;
    }
    assertThat(said).isLessThan(990);
    assertThat(one.status()).isEqualTo(408);
  }
}
