package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.base.ContentHash;
import org.vestibule.flow.Ingest;
import org.vestibule.flow.IngestReport;
import org.vestibule.flow.IngestRequest;
import org.vestibule.flow.Progress;
import org.vestibule.flow.WaitingPhoto;
import org.vestibule.flow.phone.WayIn;
import org.vestibule.store.ledger.PhoneLinkRow;
import org.vestibule.store.ledger.UploadRow;

/** Files come by phone, piece by piece, each for the one visit that its page was opened for. */
class PhoneFilesTest {

  private static final Path ROLL = Path.of("samples", "roll");
  private static final Pattern ID = Pattern.compile("\"id\":\"([0-9a-f]{32})\"");

  @TempDir private static Path home;
  private static SampleSite site;
  private static Server server;

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
  void noDefectWasMet() {
    assertThat(site.defects()).isEmpty();
  }

  private static PhoneLinkRow open(String visit) {
    return site.phonesPage(visit, new Secrets(new SecureRandom()).next());
  }

  private static Caller phone(PhoneLinkRow page) {
    return new Caller(server, site.phone(page));
  }

  /** A photograph of the samples that no test before sent, by what follows its end marker. */
  private static byte[] photograph(String name, String mark) throws Exception {
    byte[] bytes = Files.readAllBytes(ROLL.resolve(name));
    byte[] more = Arrays.copyOf(bytes, bytes.length + mark.length());
    System.arraycopy(
        mark.getBytes(StandardCharsets.US_ASCII), 0, more, bytes.length, mark.length());
    return more;
  }

  private static HttpResponse<byte[]> begin(Caller phone, String name, long size, String view)
      throws Exception {
    return phone.post(
        "/phone/files", Map.of("name", name, "size", String.valueOf(size), "view", view));
  }

  private static String id(HttpResponse<byte[]> response) {
    Matcher id = ID.matcher(Caller.text(response));
    assertThat(id.find()).as(Caller.text(response)).isTrue();
    return id.group(1);
  }

  private static HttpResponse<byte[]> piece(Caller phone, String id, int from, byte[] bytes)
      throws Exception {
    return phone.send(
        phone
            .proved("/phone/files/" + id + "/from/" + from)
            .PUT(BodyPublishers.ofByteArray(bytes)));
  }

  private static HttpResponse<byte[]> end(Caller phone, String id, String hash) throws Exception {
    return phone.post("/phone/files/" + id + "/end", Map.of("hash", hash));
  }

  private static String send(Caller phone, String name, byte[] bytes, String view)
      throws Exception {
    String id = id(begin(phone, name, bytes.length, view));
    for (int from = 0; from < bytes.length; from += 100_000) {
      piece(
          phone, id, from, Arrays.copyOfRange(bytes, from, Math.min(bytes.length, from + 100_000)));
    }
    assertThat(Caller.text(end(phone, id, ContentHash.of(bytes).hex())))
        .contains("\"confirmed\":true");
    return id;
  }

  @Test
  void twoPhonesForTwoVisitsNeverMix() throws Exception {
    Caller one = phone(open(SampleSite.TODAY_ONE));
    Caller other = phone(open(SampleSite.TODAY_OTHER));
    byte[] first = photograph("IMG_0002.JPG", "mix 1");
    byte[] second = photograph("IMG_0003.JPG", "mix 2");
    String firstId = id(begin(one, "image.jpg", first.length, "frontal"));
    String secondId = id(begin(other, "image.jpg", second.length, ""));
    piece(one, firstId, 0, Arrays.copyOf(first, 50_000));
    piece(other, secondId, 0, Arrays.copyOf(second, 50_000));
    // The other phone's file is not there for this one, whatever it asks.
    assertThat(Caller.text(one.get("/phone/files"))).contains(firstId).doesNotContain(secondId);
    assertThat(one.get("/phone/files/" + secondId).statusCode()).isEqualTo(404);
    assertThat(piece(one, secondId, 50_000, new byte[10]).statusCode()).isEqualTo(404);
    assertThat(end(one, secondId, "").statusCode()).isEqualTo(404);
    piece(one, firstId, 50_000, Arrays.copyOfRange(first, 50_000, first.length));
    piece(other, secondId, 50_000, Arrays.copyOfRange(second, 50_000, second.length));
    assertThat(end(one, firstId, "").statusCode()).isEqualTo(200);
    assertThat(end(other, secondId, "").statusCode()).isEqualTo(200);

    IngestReport report =
        Ingest.run(
                site.practice(),
                new IngestRequest(
                    home.resolve("inbox"), home.resolve("inbox/none"), "nightly", false, false),
                Progress.NONE)
            .orThrow();
    WaitingPhoto frontal = waiting(report, ContentHash.of(first));
    WaitingPhoto unsaid = waiting(report, ContentHash.of(second));
    assertThat(frontal.proposal()).containsEntry("visit", SampleSite.TODAY_ONE);
    assertThat(unsaid.proposal()).containsEntry("visit", SampleSite.TODAY_OTHER);
    assertThat(frontal.proposal().get("view")).isEqualToIgnoringCase("frontal");
    assertThat(unsaid.reasons().stream().map(WaitingPhoto.Reason::kind)).contains("NO_VIEW");
  }

  private static WaitingPhoto waiting(IngestReport report, ContentHash hash) {
    return report.waiting().stream()
        .filter(photo -> photo.hash().equals(hash))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void aFileGoesOnWhereItBrokeOff() throws Exception {
    Caller phone = phone(open(SampleSite.TODAY_ONE));
    byte[] bytes = photograph("IMG_0004.JPG", "resumed");
    String id = id(begin(phone, "IMG_7000.JPG", bytes.length, ""));
    piece(phone, id, 0, Arrays.copyOf(bytes, 30_000));
    assertThat(Caller.text(phone.get("/phone/files/" + id))).contains("\"received\":30000");
    // Sent twice, and sent from too far on: neither changes anything.
    assertThat(Caller.text(piece(phone, id, 0, bytes))).contains("\"received\":30000");
    assertThat(Caller.text(piece(phone, id, 40_000, new byte[5]))).contains("\"received\":30000");
    assertThat(Caller.text(end(phone, id, "")))
        .isEqualTo(
            "{\"advice\":\"send the rest\",\"reason\":\"only 30000 of "
                + bytes.length
                + " bytes are here\"}");
    // The page was loaded again and the same file chosen: it is the same upload.
    assertThat(id(begin(phone, "IMG_7000.JPG", bytes.length, ""))).isEqualTo(id);
    piece(phone, id, 30_000, Arrays.copyOfRange(bytes, 30_000, bytes.length));
    assertThat(Caller.text(end(phone, id, ContentHash.of(bytes).hex())))
        .contains(ContentHash.of(bytes).hex(), "\"confirmed\":true");
    // Its answer was lost and is asked for again.
    assertThat(Caller.text(end(phone, id, ContentHash.of(bytes).hex()))).contains("true");
    UploadRow row = site.practice().store().ledger().uploads().find(id).orElseThrow();
    assertThat(home.resolve("inbox").resolve(row.received().arrivedAs())).hasBinaryContent(bytes);
  }

  @Test
  void namesNeverCollide() throws Exception {
    PhoneLinkRow page = open(SampleSite.TODAY_ONE);
    Caller phone = phone(page);
    byte[] one = photograph("IMG_0006.JPG", "a");
    byte[] other = photograph("IMG_0006.JPG", "bc");
    String first = send(phone, "../..\\image.JPEG", one, "");
    String second = send(phone, "image.jpg", other, "");
    assertThat(arrivedAs(first)).isEqualTo("phone/" + page.number() + "/image.jpg");
    assertThat(arrivedAs(second)).isEqualTo("phone/" + page.number() + "/image-2.jpg");
    assertThat(home.resolve("inbox").resolve(arrivedAs(first))).hasBinaryContent(one);
    assertThat(home.resolve("inbox").resolve(arrivedAs(second))).hasBinaryContent(other);
  }

  private static String arrivedAs(String id) {
    return site.practice().store().ledger().uploads().find(id).orElseThrow().received().arrivedAs();
  }

  @Test
  void whatIsNoSoundJpegIsRefusedInWords() throws Exception {
    Caller phone = phone(open(SampleSite.TODAY_ONE));
    byte[] heic = Files.readAllBytes(ROLL.resolve("IMG_0041.HEIC"));
    String id = id(begin(phone, "IMG_0041.HEIC", heic.length, ""));
    assertThat(Caller.text(piece(phone, id, 0, heic)))
        .isEqualTo(
            "{\"advice\":\"set the phone's camera to JPEG (often called \\\"most compatible\\\") and"
                + " take the photograph again; this one stays on the phone\","
                + "\"reason\":\"this file is no JPEG photograph\"}");
    byte[] bytes = Files.readAllBytes(ROLL.resolve("IMG_0001.JPG"));
    byte[] cut = Arrays.copyOf(bytes, bytes.length / 2);
    id = id(begin(phone, "IMG_0001.JPG", cut.length, ""));
    piece(phone, id, 0, cut);
    assertThat(Caller.text(end(phone, id, ContentHash.of(cut).hex())))
        .contains("the photograph is damaged: ");
    id = id(begin(phone, "IMG_0001.JPG", bytes.length, ""));
    piece(phone, id, 0, bytes);
    assertThat(Caller.text(end(phone, id, "0".repeat(64))))
        .isEqualTo(
            "{\"advice\":\"send the file again\","
                + "\"reason\":\"the bytes that came are not those that the phone sent\"}");
    assertThat(Caller.text(begin(phone, "a.jpg", 100_000_001L, "")))
        .contains("the file has more than 100 MB");
    assertThat(Caller.text(begin(phone, "a.jpg", 0, ""))).contains("the file is empty");
    assertThat(Caller.text(begin(phone, "a.jpg", 10, "nothing")))
        .contains("this is not a view that is known");
  }

  @Test
  void anEndedPageIsEndedForEveryPhone() throws Exception {
    String secret = new Secrets(new SecureRandom()).next();
    PhoneLinkRow page = site.phonesPage(SampleSite.TODAY_ONE, secret);
    Caller stranger = new Caller(server, new Secrets(new SecureRandom()).next());
    HttpResponse<byte[]> let = stranger.post("/phone", Map.of("secret", secret));
    assertThat(let.statusCode()).isEqualTo(303);
    String held =
        let.headers().firstValue("Set-Cookie").orElseThrow().replaceFirst(".*?=([^;]+).*", "$1");
    Caller phone = new Caller(server, held);
    assertThat(phone.get("/phone/visit").statusCode()).isEqualTo(200);
    for (String closed : List.of("/", "/ways", "/waiting", "/photograph/x", "/picture/x")) {
      assertThat(phone.get(closed).statusCode()).as(closed).isEqualTo(403);
    }
    Caller staff = new Caller(server, site.session(Role.STAFF));
    assertThat(staff.post("/ways/" + page.number() + "/end", Map.of()).statusCode()).isEqualTo(303);
    assertThat(phone.get("/phone/visit").statusCode()).isEqualTo(401);
    HttpResponse<byte[]> again = stranger.post("/phone", Map.of("secret", secret));
    HttpResponse<byte[]> guessed =
        stranger.post("/phone", Map.of("secret", new Secrets(new SecureRandom()).next()));
    assertThat(again.statusCode()).isEqualTo(403);
    assertThat(Caller.text(again)).isEqualTo(Caller.text(guessed));
    // A session that somehow outlived its page is of no use either.
    Caller late = new Caller(server, site.phone(page));
    assertThat(late.get("/phone/visit").statusCode()).isEqualTo(410);
    assertThat(late.get("/phone/guide/frontal").statusCode()).isEqualTo(410);
    assertThat(begin(late, "a.jpg", 10, "").statusCode()).isEqualTo(410);
  }

  @Test
  void aPageIsOpenedForAVisitOfTodayAlone() throws Exception {
    Caller staff = new Caller(server, site.session(Role.STAFF));
    HttpResponse<byte[]> past = staff.post("/ways", Map.of("visit", "V-1201"));
    assertThat(past.statusCode()).isEqualTo(409);
    assertThat(Caller.text(past)).contains("the visit is not one of today");
    HttpResponse<byte[]> none = staff.post("/ways", Map.of("visit", "V-9"));
    assertThat(Caller.text(none)).contains("no visit of this key is in the visit list");
    HttpResponse<byte[]> open = staff.post("/ways", Map.of("visit", SampleSite.TODAY_ONE));
    assertThat(open.statusCode()).isEqualTo(200);
    assertThat(Caller.text(open)).contains("/phone#", "opened by B. Rook");
    assertThat(new WayIn(site.practice()).open().get(0).who()).isEqualTo("B. Rook");
    // 07:00 in Vienna; the day ends at midnight there.
    assertThat(new WayIn(site.practice()).open().get(0).endsAt())
        .hasToString("2026-03-14T23:00:00Z");
  }

  @Test
  void guidesAreTheVisitsOwnPatients() throws Exception {
    Caller one = phone(open(SampleSite.TODAY_ONE));
    Caller other = phone(open(SampleSite.TODAY_OTHER));
    assertThat(one.get("/phone/guide/upper-occlusal").statusCode()).isEqualTo(200);
    assertThat(other.get("/phone/guide/upper-occlusal").statusCode()).isEqualTo(404);
    String page = Caller.text(one.get("/phone/visit"));
    assertThat(page).contains("Quillfeather, Odalys", "/phone/guide/upper-occlusal");
    assertThat(page).doesNotContain("Marrowitz", "V-1402");
  }

  @Test
  void whatTheViewWasSaidOfIsMissingNoLonger() throws Exception {
    Caller phone = phone(open(SampleSite.TODAY_OTHER));
    assertThat(Caller.text(phone.get("/phone/wanted"))).contains("value=\"smile\"");
    String before = Caller.text(phone.get("/phone/wanted")).split("<details>", -1)[0];
    assertThat(before).contains("value=\"smile\"");
    send(phone, "image.jpg", photograph("IMG_0001.JPG", "smile"), "smile");
    String after = Caller.text(phone.get("/phone/wanted")).split("<details>", -1)[0];
    assertThat(after).doesNotContain("value=\"smile\"").contains("value=\"frontal\"");
  }
}
