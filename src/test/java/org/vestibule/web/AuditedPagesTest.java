package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.XMLConstants;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.audit.AuditRules;
import org.vestibule.base.ContentHash;
import org.vestibule.dental.Series;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Settings;
import org.vestibule.flow.SettingsWith;
import org.vestibule.flow.ShareWords;
import org.vestibule.flow.Sharing;
import org.vestibule.flow.TestHome;
import org.vestibule.flow.WebRules;
import org.vestibule.flow.phone.WayIn;
import org.vestibule.forward.MovingClock;
import org.vestibule.keys.Passwords;
import org.vestibule.samples.Scene;
import org.vestibule.store.index.IndexQuery;

/** What the site's audit repository is told of the pages (PS3.15 A.5.3, by its schema). */
class AuditedPagesTest {

  private static final String PASSWORD = "four calm herons wade";

  @TempDir private Path folder;

  private final List<String> said = new ArrayList<>();
  private final List<Throwable> defects = new ArrayList<>();

  private Practice practice() throws Exception {
    return practice(TestHome.CLOCK);
  }

  private Practice practice(Clock clock) throws Exception {
    TestHome home = TestHome.in(folder);
    home.put("a.jpg", Scene.FRONTAL, 1);
    home.manifest("file,visit,view,teeth,mirror\na.jpg,V1,frontal,11,none\n");
    home.ingest();
    Settings settings =
        SettingsWith.audit(
            Settings.defaults(folder, TestHome.ZONE),
            new AuditRules(true, "vestibule", "", Optional.empty()));
    Practice practice = Practice.open(folder, settings, clock, true).orThrow();
    practice
        .store()
        .ledger()
        .accounts()
        .add("desk", "staff", Passwords.hash(PASSWORD.toCharArray()), "A. Finch");
    return practice;
  }

  private static Caller let(Server server, HttpResponse<byte[]> response) {
    assertThat(response.statusCode()).as(Caller.text(response)).isEqualTo(303);
    String cookie = response.headers().firstValue("Set-Cookie").orElseThrow();
    return new Caller(server, cookie.replaceFirst(".*?=([^;]+).*", "$1"));
  }

  private static HttpResponse<byte[]> signIn(Server server, String name, String password)
      throws Exception {
    String before = new Secrets(new SecureRandom()).next();
    return new Caller(server, before)
        .post("/sign-in", Map.of("name", name, "password", password, "then", "/"));
  }

  @Test
  void whoComesAsksLooksAndGoesIsTold() throws Exception {
    try (Practice practice = practice();
        Server server =
            Server.start(practice, WebRules.DEFAULT.at(0), null, said::add, defects::add)) {
      assertThat(signIn(server, "desk", "wrong").statusCode()).isEqualTo(403);
      assertThat(signIn(server, "a password in the wrong field", "x").statusCode()).isEqualTo(403);
      Caller desk = let(server, signIn(server, "desk", PASSWORD));
      desk.post("/who", Map.of("person", "B. Rook", "then", "/"));
      desk.get("/");
      desk.get("/results?q=frontal+Orla");
      ContentHash photo =
          new ContentHash(
              practice.store().ledger().intents().find(uid(practice)).orElseThrow().hash().hex());
      desk.get("/photograph/" + new PhotoKeys(practice).of(photo));
      desk.post("/sign-out", Map.of());
      assertThat(told())
          .containsExactly(
              "110114 110122 E 8 desk; ",
              "110114 110122 E 8 unknown name; ",
              "110114 110122 E 0 desk; ",
              "110112 - E 0 B. Rook (desk); ",
              "110112 - E 0 B. Rook (desk); ",
              "110103 - R 0 B. Rook (desk); P1 Tallgrass^Orla",
              "110114 110123 E 0 B. Rook (desk); ");
      assertThat(Files.readString(log())).doesNotContain("wrong field");
      assertThat(defects).isEmpty();
    }
  }

  private static String uid(Practice practice) throws Exception {
    practice.store().followIndex();
    return practice.store().index().search(IndexQuery.all(1)).hits().get(0).record().objectUid();
  }

  @Test
  void whoComesByALinkIsTold() throws Exception {
    try (Practice practice = practice();
        Server server =
            Server.start(practice, WebRules.DEFAULT.at(0), null, said::add, defects::add)) {
      String secret = new Secrets(new SecureRandom()).next();
      ShareWords words =
          new ShareWords(
              "own-copy",
              new Sharing(practice).ofVisit("V1").orThrow(),
              "the one who asked",
              "A. Finch",
              "asked at the desk",
              "B. Rook");
      ShareLinks.Made made =
          new ShareLinks(practice)
              .make(words, true, 14, "http://localhost", "B. Rook", secret)
              .orThrow();
      Files.delete(log());
      come(server, new Secrets(new SecureRandom()).next(), "");
      come(server, secret, "wrong");
      let(server, come(server, secret, made.second()));
      assertThat(told())
          .containsExactly(
              "110114 110122 E 8 unknown link; ",
              "110114 110122 E 8 share 1; ",
              "110114 110122 E 0 share 1; ",
              "110103 - R 0 share 1; P1 Tallgrass^Orla");
      assertThat(defects).isEmpty();
    }
  }

  @Test
  void aPhoneThatComesByItsLinkIsToldAndSoIsASittingThatEndsByItself() throws Exception {
    MovingClock clock = new MovingClock(Instant.parse("2026-03-12T09:00:00Z"));
    try (Practice practice = practice(clock);
        Server server =
            Server.start(practice, WebRules.DEFAULT.at(0), null, said::add, defects::add)) {
      String secret = new Secrets(new SecureRandom()).next();
      new WayIn(practice).open("V1", Series.BASELINE, Secrets.mark(secret), "B. Rook").orThrow();
      Files.deleteIfExists(log());
      phone(server, new Secrets(new SecureRandom()).next());
      Caller phone = let(server, phone(server, secret));
      Caller desk = let(server, signIn(server, "desk", PASSWORD));
      clock.move(WebRules.DEFAULT.idle().plusMinutes(1));
      desk.get("/");
      desk.get("/");
      // Nobody comes back to this one: it is noticed when the next one begins.
      let(server, signIn(server, "desk", PASSWORD));
      phone.get("/phone/visit");
      assertThat(told())
          .containsExactly(
              "110114 110122 E 8 unknown phone link; ",
              "110114 110122 E 0 phone link 1; ",
              "110114 110122 E 0 desk; ",
              "110114 110123 E 0 desk; ",
              "110114 110122 E 0 desk; ",
              "110114 110123 E 0 phone link 1; ");
      assertThat(defects).isEmpty();
    }
  }

  private static HttpResponse<byte[]> phone(Server server, String secret) throws Exception {
    return new Caller(server, new Secrets(new SecureRandom()).next())
        .post("/phone", Map.of("secret", secret));
  }

  private static HttpResponse<byte[]> come(Server server, String secret, String second)
      throws Exception {
    return new Caller(server, new Secrets(new SecureRandom()).next())
        .post("/shared", Map.of("secret", secret, "second", second));
  }

  private Path log() {
    return folder.resolve("audit").resolve("2026-03.log");
  }

  /** Event, type, action, outcome, who (by which account) and the patient; each one valid. */
  private List<String> told() throws Exception {
    Schema schema =
        SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI)
            .newSchema(
                AuditedPagesTest.class.getResource("/org/vestibule/audit/audit-message.xsd"));
    List<String> told = new ArrayList<>();
    for (String line : Files.readAllLines(log())) {
      String xml = line.substring(line.indexOf('<'));
      schema.newValidator().validate(new StreamSource(new StringReader(xml)));
      String by = part(xml, "(<ActiveParticipant[^>]*UserIsRequestor=\"true\"[^>]*)");
      String account = part(by, "AlternativeUserID=\"([^\"]*)\"");
      String name = part(by, "UserID=\"([^\"]*)\"");
      String patient =
          (part(xml, "ParticipantObjectID=\"([^\"]*)\" ParticipantObjectTypeCode=\"1\"")
                  + " "
                  + part(xml, ".*<ParticipantObjectName>([^<]*)<.*$"))
              .replaceAll("^- -$", "");
      told.add(
          String.join(
                  " ",
                  part(xml, "<EventID csd-code=\"(\\d+)\""),
                  part(xml, "<EventTypeCode csd-code=\"(\\d+)\""),
                  part(xml, "EventActionCode=\"(.)\""),
                  part(xml, "EventOutcomeIndicator=\"(\\d+)\""),
                  name)
              + (account.equals("-") || account.equals(name) ? "" : " (" + account + ")")
              + "; "
              + patient);
    }
    return told;
  }

  private static String part(String xml, String pattern) {
    Matcher matcher = Pattern.compile(pattern).matcher(xml);
    return matcher.find() ? matcher.group(1) : "-";
  }
}
