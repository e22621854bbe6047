package org.vestibule.forward;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.forward.DestinationRules.Confirm;
import org.vestibule.forward.StoreAnswer.Accepted;
import org.vestibule.forward.StoreAnswer.Failed;
import org.vestibule.forward.StoreAnswer.Reach;
import org.vestibule.keys.TlsFiles;

/** Store and Search as PS3.18 2024e 10.5 and 10.6 have them (from memory), and hostile answers. */
class WebArchiveTest {

  private static final String UID = "2.25.1234";
  private static final byte[] FILE = "not parsed here".repeat(100).getBytes(StandardCharsets.UTF_8);

  @TempDir private Path folder;
  private WebPeer peer;

  @BeforeEach
  void start() throws IOException {
    peer = new WebPeer();
  }

  @AfterEach
  void stop() {
    peer.close();
  }

  private Outcome<ArchiveSession> open(URI service, Optional<Path> token, Duration wait) {
    DestinationRules rules =
        new DestinationRules(
            "web",
            true,
            new DestinationRules.Web(service, TlsFiles.NONE, token),
            Confirm.QUERY,
            Duration.ofMinutes(1),
            wait);
    return WebArchive.of(rules, Clock.systemUTC()).orThrow().open(Set.of(), report -> true);
  }

  private ArchiveSession session() {
    return open(peer.service(), Optional.empty(), Duration.ofSeconds(20)).orThrow();
  }

  private static Instance instance() {
    return new Instance(FiledObjects.PHOTO, UID, "2.25.1", "2.25.2");
  }

  private static Parcel parcel() {
    return parcel(() -> new ByteArrayInputStream(FILE), FILE.length);
  }

  private static Parcel parcel(Parcel.Source source, long size) {
    return new Parcel(instance(), "1.2.840.10008.1.2.4.50", Parcel.Kind.PHOTO, source, size, 300);
  }

  private StoreAnswer store(int status, String type, String body) {
    peer.script = (exchange, any) -> WebPeer.answer(exchange, status, type, body);
    return session().store(parcel());
  }

  private static String json(String sequence, String more) {
    return "{\""
        + sequence
        + "\":{\"vr\":\"SQ\",\"Value\":[{\"00081150\":{\"vr\":\"UI\",\"Value\":[\""
        + FiledObjects.PHOTO
        + "\"]},\"00081155\":{\"vr\":\"UI\",\"Value\":[\""
        + UID
        + "\"]}"
        + more
        + "}]}}";
  }

  private static String reason(String tag, int number) {
    return ",\"" + tag + "\":{\"vr\":\"US\",\"Value\":[" + number + "]}";
  }

  @Test
  void theRequestIsOneMultipartWithLengthAndTransferSyntax() throws IOException {
    assertThat(store(200, "application/dicom+json", json("00081199", "")))
        .isEqualTo(new Accepted(0, "", Map.of()));
    WebPeer.Asked asked = peer.asked.get(0);
    assertThat(asked.method() + " " + asked.target()).isEqualTo("POST /dicom-web/studies");
    assertThat(asked.length()).isEqualTo("" + asked.body().length);
    assertThat(asked.type())
        .matches("multipart/related; type=\"application/dicom\"; boundary=vestibule-[0-9a-f-]{36}");
    String boundary = asked.type().substring(asked.type().indexOf("boundary=") + 9);
    assertThat(asked.text())
        .isEqualTo(
            "--"
                + boundary
                + "\r\nContent-Type: application/dicom; transfer-syntax=1.2.840.10008.1.2.4.50\r\n"
                + "Content-Length: "
                + FILE.length
                + "\r\n\r\n"
                + new String(FILE, java.nio.charset.StandardCharsets.ISO_8859_1)
                + "\r\n--"
                + boundary
                + "--\r\n");
  }

  @Test
  void eachObjectsFailureIsTold() {
    assertThat(store(409, "application/dicom+json", json("00081198", reason("00081197", 0xA900))))
        .isEqualTo(
            new StoreAnswer.Refused(
                0xA900, "the archive says that the object does not match its class (status A900)"));
    assertThat(store(202, "application/dicom+json", json("00081198", reason("00081197", 0xA700))))
        .isEqualTo(
            new Failed(
                0xA700,
                "the archive is out of resources (often its disk is full) (status A700)",
                Reach.DESTINATION));
    assertThat(store(409, "application/dicom+json", json("00081198", "")))
        .isEqualTo(
            new Failed(
                0x0110,
                "the archive failed while it was storing it (status 0110)",
                Reach.OBJECT,
                true));
    assertThat(store(409, "application/dicom+json", json("00081198", reason("00081197", 0xB000))))
        .as("a warning among failures is none")
        .isInstanceOf(Failed.class);
  }

  @Test
  void warningsAndChangesAreTold() {
    String changes =
        reason("00081196", 0xB000)
            + ",\"04000561\":{\"vr\":\"SQ\",\"Value\":[{\"04000550\":{\"vr\":\"SQ\",\"Value\":["
            + "{\"00100020\":{\"vr\":\"LO\",\"Value\":[\"P1\"]}}]}}]}";
    assertThat(store(202, "application/dicom+json", json("00081199", changes)))
        .isEqualTo(
            new Accepted(
                0xB000,
                "stored; the archive changed attributes (status B000); it changed PatientID",
                Map.of()));
  }

  private static byte[] gzip(byte[] plain) throws IOException {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (GZIPOutputStream out = new GZIPOutputStream(packed)) {
      out.write(plain);
    }
    return packed.toByteArray();
  }

  private void packs(int status, String encoding, byte[] body) {
    peer.script =
        (exchange, any) -> {
          exchange.getResponseHeaders().set("Content-Type", "application/dicom+json");
          exchange.getResponseHeaders().set("Content-Encoding", encoding);
          exchange.sendResponseHeaders(status, 0); // in chunks
          exchange.getResponseBody().write(body);
          exchange.close();
        };
  }

  /** RFC 9110 12.5.3: identity is asked for, and a server may pack its answer all the same. */
  @ParameterizedTest
  @ValueSource(strings = {"gzip", "X-GZIP", "identity, gzip"})
  void anAnswerThatIsPackedThoughNobodyAskedIsUnpacked(String encoding) throws IOException {
    String failure = json("00081198", reason("00081197", 0xA900));
    packs(409, encoding, gzip(failure.getBytes(StandardCharsets.UTF_8)));
    assertThat(session().store(parcel()))
        .isEqualTo(
            new StoreAnswer.Refused(
                0xA900, "the archive says that the object does not match its class (status A900)"));
    String match = "[{\"00080018\":{\"vr\":\"UI\",\"Value\":[\"" + UID + "\"]}}]";
    packs(200, encoding, gzip(match.getBytes(StandardCharsets.UTF_8)));
    assertThat(session().ask(List.of(instance())))
        .isEqualTo(new PresenceAnswer.Answered(Map.of(UID, Map.of())));
    assertThat(peer.asked).extracting(WebPeer.Asked::encodings).containsOnly("identity");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          br | the archive packed its answer as br, which we did not ask for and can't read
          gzip, zstd | the archive packed its answer as gzip, zstd, which we did not ask for and can't read
          gzip | the archive calls its answer gzip, and it is none
          """)
  void whatCannotBeUnpackedConfirmsNothingAndIsNamed(String encoding, String words) {
    packs(200, encoding, "\u001f\u008b, or not".getBytes(StandardCharsets.ISO_8859_1));
    assertThat(session().store(parcel()))
        .isEqualTo(new Failed(-1, words + " (HTTP status 200)", Reach.OBJECT, true));
    assertThat(session().ask(List.of(instance())))
        .isEqualTo(
            new PresenceAnswer.Failed(
                -1, words + " (HTTP status 200)", false, Map.of(), Set.of(UID)));
  }

  @Test
  void aPackedAnswerThatEndsTooEarlyConfirmsNothing() throws IOException {
    byte[] packed = gzip("[]".getBytes(UTF_8));
    packs(200, "gzip", Arrays.copyOf(packed, packed.length - 8));
    assertThat(session().ask(List.of(instance())))
        .isEqualTo(
            new PresenceAnswer.Failed(
                -1,
                "the archive sent only a part of its packed answer (HTTP status 200)",
                false,
                Map.of(),
                Set.of(UID)));
  }

  /** A few packed bytes that become many are cut off like the many themselves. */
  @Test
  void aPackedAnswerWithoutEndIsCutOff() throws IOException {
    packs(200, "gzip", gzip(" ".repeat(WebCall.LONGEST_ANSWER + 1).getBytes(UTF_8)));
    assertThat(session().ask(List.of(instance())))
        .isEqualTo(
            new PresenceAnswer.Failed(
                -1,
                "the archive's answer to a search for one object is endless (HTTP status 200)",
                false,
                Map.of(),
                Set.of(UID)));
  }

  /** RFC 9110 8.3.1: names in any case, parameters quoted or not. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "application/dicom+json; charset=utf-8",
        "Application/DICOM+JSON;charset=\"UTF-8\"",
        "application/json"
      })
  void theTypeOfAnAnswerMayHaveParameters(String type) {
    assertThat(store(409, type, json("00081198", reason("00081197", 0xC000))))
        .isEqualTo(
            new StoreAnswer.Refused(
                0xC000, "the archive can't understand the object (status C000)"));
  }

  /** PS3.19 A.1, from memory. */
  @Test
  void anAnswerInXmlIsUnderstood() {
    String xml =
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?><NativeDicomModel"
            + " xmlns=\"http://dicom.nema.org/PS3.19/models/NativeDICOM\">"
            + "<DicomAttribute tag=\"00081198\" vr=\"SQ\" keyword=\"FailedSOPSequence\">"
            + "<Item number=\"1\"><DicomAttribute tag=\"00081155\" vr=\"UI\""
            + " keyword=\"ReferencedSOPInstanceUID\"><Value number=\"1\">2.25.1234</Value>"
            + "</DicomAttribute><DicomAttribute tag=\"00100010\" vr=\"PN\"><PersonName number=\"1\">"
            + "<Alphabetic><FamilyName>Reed</FamilyName></Alphabetic></PersonName></DicomAttribute>"
            + "<DicomAttribute tag=\"00081197\" vr=\"US\" keyword=\"FailureReason\">"
            + "<Value number=\"1\">49152</Value></DicomAttribute></Item></DicomAttribute>"
            + "</NativeDicomModel>";
    assertThat(store(409, "Application/DICOM+XML; charset=\"utf-8\"", xml))
        .isEqualTo(
            new StoreAnswer.Refused(
                0xC000, "the archive can't understand the object (status C000)"));
    String bomb = "<!DOCTYPE a [<!ENTITY b \"" + "c".repeat(100) + "\">]><a>&b;</a>";
    assertThat(store(409, "application/dicom+xml", bomb))
        .isEqualTo(
            new Failed(
                409,
                "the archive did not store it and does not say why (HTTP status 409)",
                Reach.OBJECT));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          301 | DESTINATION | the archive sends us to another address, and that is not followed
          400 | OBJECT | the archive calls the request malformed
          401 | DESTINATION | the archive wants other credentials
          404 | DESTINATION | the archive has no such service at this address
          423 | OBJECT | the archive can't store it while something else holds it back
          425 | OBJECT | the archive can't store it while something else holds it back
          429 | DESTINATION | the archive takes nothing now
          500 | OBJECT | the archive failed while it was dealing with it
          503 | DESTINATION | the archive is not available now
          507 | DESTINATION | the archive is out of space
          """)
  void aStatusAloneIsUnderstood(int status, Reach reach, String words) {
    assertThat(store(status, "text/html", "<html>oh"))
        .isEqualTo(
            new Failed(
                status,
                words + " (HTTP status " + status + ")",
                reach,
                status < 400 || status >= 500));
  }

  @Test
  void successWithoutWordsIsBelievedUntilItIsAsked() {
    for (String body : List.of("", "garbage", "[]", "{\"0008\":1}")) {
      assertThat(store(200, "application/dicom+json", body))
          .isEqualTo(new Accepted(0, "the archive does not say what it stored", Map.of()));
    }
    assertThat(store(200, "application/dicom+json", json("00081199", "").replace(UID, "2.25.9")))
        .isEqualTo(new Failed(-1, "the archive answered about another object", Reach.OBJECT, true));
  }

  /** Credentials never go to another address. */
  @Test
  void aRedirectIsNotFollowed() throws IOException {
    Path token = Files.writeString(folder.resolve("token"), "secret-token\n");
    try (WebPeer other = new WebPeer()) {
      peer.script =
          (exchange, any) -> {
            exchange.getResponseHeaders().set("Location", other.service() + "/studies");
            WebPeer.answer(exchange, 307, "text/plain", "");
          };
      ArchiveSession session =
          open(peer.service(), Optional.of(token), Duration.ofSeconds(20)).orThrow();
      assertThat(session.store(parcel())).isInstanceOf(Failed.class);
      assertThat(peer.asked.get(0).token()).isEqualTo("Bearer secret-token");
      assertThat(other.asked).isEmpty();
    }
  }

  @Test
  void aTokenFileThatHoldsNoneIsRefused() throws IOException {
    Path empty = Files.writeString(folder.resolve("empty"), "\n");
    Path two = Files.writeString(folder.resolve("two"), "a token\n");
    Duration wait = Duration.ofSeconds(20);
    String advice = "put the archive's bearer token into its first line";
    assertThat(open(peer.service(), Optional.of(empty), wait))
        .isEqualTo(new Refused<>("the token file empty holds no token in its first line", advice));
    assertThat(open(peer.service(), Optional.of(two), wait))
        .isEqualTo(new Refused<>("the token file two holds no token in its first line", advice));
    assertThat(open(peer.service(), Optional.of(folder.resolve("none")), wait))
        .isEqualTo(new Refused<>("the token file none can't be read", advice));
  }

  @Test
  void nobodyThereIsARefusal() {
    URI service = peer.service();
    peer.close();
    assertThat(open(service, Optional.empty(), Duration.ofSeconds(20)))
        .isEqualTo(
            new Refused<>(
                "localhost:" + service.getPort() + " can't be reached",
                "see whether it runs, and whether its address is right"));
  }

  @Test
  void whoeverIsNotLetInIsToldAtOnce() {
    peer.optionsStatus = 401;
    assertThat(open(peer.service(), Optional.empty(), Duration.ofSeconds(20)))
        .isEqualTo(
            new Refused<>(
                "the archive wants other credentials (HTTP status 401)",
                "see whether token or certificate in the settings are still good"));
  }

  @Test
  void silenceEndsAfterItsTime() {
    CountDownLatch never = new CountDownLatch(1);
    peer.script =
        (exchange, any) -> {
          try {
            never.await();
          } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
          }
        };
    ArchiveSession session =
        open(peer.service(), Optional.empty(), Duration.ofSeconds(1)).orThrow();
    assertThat(session.store(parcel()))
        .isEqualTo(
            new Failed(
                -1,
                "localhost:" + peer.service().getPort() + " did not answer within 1 seconds",
                Reach.SESSION));
    never.countDown();
  }

  /** Head at once, then a drop now and then, without end. */
  @Test
  void anAnswerThatDripsEndsAfterItsTime() {
    peer.script =
        (exchange, any) -> {
          exchange.sendResponseHeaders(200, 0);
          try (OutputStream out = exchange.getResponseBody()) {
            for (int i = 0; i < 100; i++) {
              out.write(' ');
              out.flush();
              Thread.sleep(100);
            }
          } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
          }
        };
    ArchiveSession session =
        open(peer.service(), Optional.empty(), Duration.ofSeconds(1)).orThrow();
    assertThat(session.store(parcel())).isInstanceOf(Failed.class);
  }

  @Test
  void anAnswerWithoutEndIsCutOff() {
    peer.script =
        (exchange, any) -> {
          exchange.getResponseHeaders().set("Content-Type", "application/dicom+json");
          exchange.sendResponseHeaders(409, 0);
          try (OutputStream out = exchange.getResponseBody()) {
            byte[] much = " ".repeat(1 << 16).getBytes(StandardCharsets.UTF_8);
            for (int i = 0; i < 10_000; i++) {
              out.write(much);
            }
          } catch (IOException cutOff) {
            // as it should be
          }
        };
    assertThat(session().store(parcel()))
        .isEqualTo(
            new Failed(
                409,
                "the archive did not store it and does not say why (HTTP status 409)",
                Reach.OBJECT));
  }

  /** The connection ends while the object is on its way. */
  @Test
  void aConnectionThatBreaksMayHaveStoredIt() {
    peer.script = (exchange, any) -> exchange.getHttpContext().getServer().stop(0);
    assertThat(session().store(parcel()))
        .isInstanceOfSatisfying(
            Failed.class,
            failed -> {
              assertThat(failed.reach()).isEqualTo(Reach.SESSION);
              assertThat(failed.words()).contains("broke");
            });
  }

  @Test
  void aFileThatIsGoneHereIsNotTheArchivesFault() {
    Parcel.Source gone =
        () -> {
          throw new IOException("gone");
        };
    assertThat(session().store(parcel(gone, 10)))
        .isEqualTo(
            new Failed(-1, "the object's file can't be read here: run verify", Reach.OBJECT));
    assertThat(peer.asked).isEmpty();
  }

  /** Whatever the size, the bytes are streamed: this one would not fit into the test's memory. */
  @Test
  void aLargeObjectIsStreamed() {
    long size = 3L << 29;
    Parcel.Source endless =
        () ->
            new InputStream() {
              private long read;

              @Override
              public int read() {
                return read++ < size ? 0 : -1;
              }

              @Override
              public int read(byte[] to, int from, int length) {
                int now = (int) Math.min(length, size - read);
                read += Math.max(0, now);
                return now <= 0 ? -1 : now;
              }
            };
    peer.script = (exchange, any) -> WebPeer.answer(exchange, 200, "text/plain", "");
    peer.swallows = true;
    assertThat(
            open(peer.service(), Optional.empty(), Duration.ofSeconds(60))
                .orThrow()
                .store(parcel(endless, size)))
        .isInstanceOf(Accepted.class);
  }

  @Test
  void whatIsShownIsFoundWhereItWasSentOrAnywhere() {
    String match =
        "[{\"00080018\":{\"vr\":\"UI\",\"Value\":[\""
            + UID
            + "\"]},\"0020000D\":{\"vr\":\"UI\",\"Value\":[\"2.25.77\"]},"
            + "\"00100020\":{\"vr\":\"LO\",\"Value\":[\"X9\"]}}]";
    peer.script =
        (exchange, asked) ->
            WebPeer.answer(
                exchange,
                asked.target().contains("/studies/") ? 204 : 200,
                "application/dicom+json",
                asked.target().contains("/studies/") ? "" : match);
    assertThat(session().ask(List.of(instance())))
        .isEqualTo(
            new PresenceAnswer.Answered(
                Map.of(UID, Map.of("StudyInstanceUID", "2.25.77", "PatientID", "X9"))));
    assertThat(peer.asked.get(0).target())
        .isEqualTo(
            "/dicom-web/studies/2.25.1/series/2.25.2/instances?SOPInstanceUID=2.25.1234"
                + "&includefield=StudyInstanceUID&includefield=SeriesInstanceUID"
                + "&includefield=PatientID&includefield=AccessionNumber");
  }

  /** A server that passes over the question must not make us believe. */
  @Test
  void anotherObjectIsNotTheOneThatWasAskedFor() {
    peer.script =
        (exchange, asked) ->
            WebPeer.answer(
                exchange,
                200,
                "application/dicom+json",
                "[{\"00080018\":{\"vr\":\"UI\",\"Value\":[\"2.25.5\"]}},{},\"x\"]");
    assertThat(session().ask(List.of(instance()))).isEqualTo(new PresenceAnswer.Answered(Map.of()));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          200 | {} | the archive's answer to a search is not a list (HTTP status 200)
          200 | [{ | the archive's answer to a search is no JSON (HTTP status 200)
          401 | no | the archive wants other credentials (HTTP status 401)
          206 | [] | the archive answered a search with another status (HTTP status 206)
          """)
  void aSearchThatIsNotAnsweredConfirmsNothing(int status, String body, String words) {
    peer.script = (exchange, asked) -> WebPeer.answer(exchange, status, "text/plain", body);
    assertThat(session().ask(List.of(instance())))
        .isEqualTo(
            new PresenceAnswer.Failed(
                -1, words, false, Map.of(), Set.of(instance().sopInstanceUid())));
  }

  /**
   * One answer that is none says nothing about the next object, nor that the first is not there.
   */
  @Test
  void aSearchThatFailsLeavesItsOwnObjectOpen() {
    Instance other = new Instance("1.2.3", "2.25.5678", "2.25.1", "2.25.2");
    peer.script =
        (exchange, asked) ->
            WebPeer.answer(
                exchange,
                asked.target().contains("2.25.5678")
                    ? 204
                    : asked.target().contains("/studies/") ? 204 : 503,
                "application/dicom+json",
                "");
    assertThat(session().ask(List.of(instance(), other)))
        .isEqualTo(
            new PresenceAnswer.Failed(
                -1,
                "the archive is not available now (HTTP status 503)",
                false,
                Map.of(),
                Set.of(UID)));
  }

  @Test
  void anArchiveThatFailsAgainAndAgainIsAskedNoMore() {
    peer.script = (exchange, asked) -> WebPeer.answer(exchange, 503, "text/plain", "");
    List<Instance> many =
        java.util.stream.IntStream.range(0, 10)
            .mapToObj(i -> new Instance("1.2.3", "2.25.9" + i, "2.25.1", "2.25.2"))
            .toList();
    PresenceAnswer.Failed failed = (PresenceAnswer.Failed) session().ask(many);
    assertThat(failed.sessionOver()).isTrue();
    assertThat(failed.open()).hasSize(10);
    assertThat(peer.asked).hasSize(3);
  }

  /** RFC 9110 15.5.21: it reads the form, and can't do what stands in it, today or tomorrow. */
  @Test
  void anObjectThatCannotBeProcessedIsRefusedAndStopsNothing() {
    assertThat(store(422, "text/plain", "no"))
        .isEqualTo(
            new StoreAnswer.Refused(422, "the archive can't process the object (HTTP status 422)"));
  }
}
