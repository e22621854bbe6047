package org.vestibule.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.DatagramPacket;
import java.net.DatagramSocket;
import java.net.InetAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.keys.TlsFiles;

/** Messages stay in the files until a server has got them; no way loses one. */
class AuditTrailTest {

  @TempDir private static Path keys;
  private static TestCertificate certificate;
  private static TestCertificate other;

  @TempDir private Path home;

  @BeforeAll
  static void certify() throws Exception {
    certificate = TestCertificate.make(keys, "server");
    other = TestCertificate.make(keys, "other");
  }

  @Test
  void withEverythingOffNothingIsWritten() throws IOException {
    try (AuditTrail trail = new AuditTrail(AuditRules.NONE, home, Invented.CLOCK)) {
      assertThat(trail.isOn()).isFalse();
      trail.record(event("a"));
      assertThat(trail.send()).isEqualTo(SendReport.NOTHING);
    }
    assertThat(home).isEmptyDirectory();
  }

  @Test
  void aLineForEachMessageInAFileForEachMonthForItsOwnerAlone() throws Exception {
    Clock april = Clock.fixed(Instant.parse("2026-04-01T00:00:00Z"), ZoneOffset.UTC);
    try (AuditTrail trail = trail(Optional.empty())) {
      trail.record(event("a"));
      trail.record(event("b"));
      trail.record(
          new AuditEvents(Invented.PROGRAM, april)
              .login(Invented.ADA, true, AuditOutcome.SUCCESS, ""));
    }
    Path march = home.resolve("audit/2026-03.log");
    List<String> lines = Files.readAllLines(march);
    assertThat(lines).hasSize(2).allMatch(l -> l.startsWith("2026-03-14T06:00:00.123Z <?xml"));
    for (String line : lines) {
      Invented.read(line.substring(line.indexOf(' ') + 1));
    }
    assertThat(Files.readAllLines(home.resolve("audit/2026-04.log"))).hasSize(1);
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(march)))
        .isEqualTo("rw-------");
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(home.resolve("audit"))))
        .isEqualTo("rwx------");
  }

  @Test
  void aLineThatACrashCutShortSwallowsNoOther() throws IOException {
    try (AuditTrail trail = trail(Optional.empty())) {
      trail.record(event("a"));
      Path file = home.resolve("audit/2026-03.log");
      Files.writeString(file, "2026-03-14T06:00:00Z <?xml ver", StandardOpenOption.APPEND);
      trail.record(event("b"));
      assertThat(Files.readAllLines(file)).hasSize(3);
      try (Unsent unsent = new Unsent(home.resolve("audit"), SentMark.Place.BEGINNING)) {
        assertThat(unsent.next().get(1)).contains("word a");
        assertThat(unsent.next().get(1)).contains("word b");
        assertThat(unsent.next()).isEmpty();
      }
    }
  }

  @Test
  void manyThreadsWriteWholeLines() throws Exception {
    List<Thread> threads = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      int number = i;
      Thread thread =
          new Thread(
              () -> {
                try (AuditTrail trail = trail(Optional.empty())) {
                  for (int n = 0; n < 10; n++) {
                    trail.record(event(number + "-" + n));
                  }
                } catch (IOException e) {
                  throw new java.io.UncheckedIOException(e);
                }
              });
      threads.add(thread);
      thread.start();
    }
    for (Thread thread : threads) {
      thread.join();
    }
    List<String> lines = Files.readAllLines(home.resolve("audit/2026-03.log"));
    assertThat(lines).hasSize(80).allMatch(line -> line.endsWith("</AuditMessage>"));
    assertThat(new HashSet<>(lines)).hasSize(80);
  }

  @Test
  void aServerThatIsDownGetsEverythingLater() throws Exception {
    int port = freePort();
    Optional<AuditRules.Syslog> server = tls(port, certificate.trusted());
    try (AuditTrail trail = trail(server)) {
      trail.record(event("a"));
      trail.record(event("b"));
      assertThat(trail.send())
          .isEqualTo(
              new SendReport(
                  0,
                  2,
                  0,
                  "the syslog server localhost:"
                      + port
                      + " can't be reached: check that it runs; the messages are kept and sent"
                      + " later"));
      try (CountingReceiver receiver = new CountingReceiver(certificate, port)) {
        trail.record(event("c"));
        assertThat(trail.send()).isEqualTo(new SendReport(3, 0, 0, ""));
        assertThat(words(receiver)).containsExactly("word a", "word b", "word c");
        assertThat(trail.send()).as("sent once").isEqualTo(SendReport.NOTHING);
        trail.record(event("d"));
        assertThat(trail.send()).isEqualTo(new SendReport(1, 0, 0, ""));
        assertThat(words(receiver)).containsExactly("word a", "word b", "word c", "word d");
      }
    }
  }

  /** Header of RFC 5424 6.2 and the lengths of RFC 5425 4.3, read apart from the sender. */
  @Test
  void aMessageIsFramedAsTheRfcsSay() throws Exception {
    try (CountingReceiver receiver = new CountingReceiver(certificate, 0);
        AuditTrail trail = trail(tls(receiver.port(), certificate.trusted()))) {
      trail.record(event("\u00FC\u4F60"));
      trail.send();
      String message = receiver.messages().get(0);
      assertThat(message)
          .matches(
              "(?s)<85>1 2026-03-14T06:00:00\\.123Z [!-~]+ vestibule [0-9]+ DICOM\\+RFC3881 -"
                  + " \uFEFF<\\?xml .*</AuditMessage>")
          .contains("word \u00FC\u4F60");
    }
  }

  @Test
  void aServerThatHangsUpMidwayLosesNothing() throws Exception {
    try (CountingReceiver receiver = new CountingReceiver(certificate, 0);
        AuditTrail trail = trail(tls(receiver.port(), certificate.trusted()))) {
      for (int i = 0; i < 50; i++) {
        trail.record(event("m" + i + "."));
      }
      receiver.hangUpAfter(7);
      SendReport first = trail.send();
      assertThat(first.sent()).isZero();
      assertThat(first.waiting()).isEqualTo(50);
      assertThat(trail.send()).isEqualTo(new SendReport(50, 0, 0, ""));
      assertThat(new HashSet<>(words(receiver))).hasSize(50);
    }
  }

  /** Few messages lie in a buffer until the end: only then it is seen that the server is gone. */
  @Test
  void aServerThatDiesBeforeTheEndOfTheLineGetsEverythingAgain() throws Exception {
    try (CountingReceiver receiver = new CountingReceiver(certificate, 0);
        AuditTrail trail = trail(tls(receiver.port(), certificate.trusted()))) {
      for (int i = 0; i < 3; i++) {
        trail.record(event("m" + i + "."));
      }
      receiver.hangUpAfter(1);
      assertThat(trail.send().waiting()).isEqualTo(3);
      assertThat(trail.send()).isEqualTo(new SendReport(3, 0, 0, ""));
    }
  }

  /** It takes everything and holds each connection open; it is not told the same for ever. */
  @Test
  void aServerThatNeverClosesGetsEachMessageOnce() throws Exception {
    try (CountingReceiver receiver = new CountingReceiver(certificate, 0);
        AuditTrail trail = trail(tls(receiver.port(), certificate.trusted()))) {
      receiver.neverClose();
      for (int i = 0; i < 3; i++) {
        trail.record(event("m" + i + "."));
      }
      assertThat(trail.send()).isEqualTo(new SendReport(3, 0, 0, ""));
      assertThat(trail.send()).isEqualTo(SendReport.NOTHING);
      assertThat(words(receiver)).hasSize(3);
    }
  }

  @Test
  void aServerThatIsNotTrustedGetsNothing() throws Exception {
    try (CountingReceiver receiver = new CountingReceiver(certificate, 0);
        AuditTrail trail = trail(tls(receiver.port(), other.trusted()))) {
      trail.record(event("a"));
      assertThat(trail.send())
          .isEqualTo(
              new SendReport(
                  0,
                  1,
                  0,
                  "the certificate of the syslog server localhost:"
                      + receiver.port()
                      + " is not trusted: name the certificate of the other side, or of who"
                      + " issued it, as trusted"));
      assertThat(receiver.messages()).isEmpty();
    }
  }

  @Test
  void closingSendsAndLeavesAServerThatIsDownInPeace() throws Exception {
    int port = freePort();
    Optional<AuditRules.Syslog> server = tls(port, certificate.trusted());
    try (AuditTrail trail = trail(server)) {
      trail.record(event("a"));
    }
    assertThat(home.resolve("audit/down")).content().contains("can't be reached");
    try (CountingReceiver receiver = new CountingReceiver(certificate, port)) {
      try (AuditTrail trail = trail(server)) {
        trail.record(event("b"));
      }
      assertThat(receiver.messages()).as("within the same minute it is not tried").isEmpty();
      try (AuditTrail trail = trail(server)) {
        assertThat(trail.send().sent()).isEqualTo(2);
      }
      assertThat(home.resolve("audit/down")).doesNotExist();
    }
  }

  @Test
  void byUdpEachMessageIsADatagramAndTooLongOnesAreTold() throws Exception {
    try (DatagramSocket receiver = new DatagramSocket(0, InetAddress.getLoopbackAddress());
        AuditTrail trail =
            trail(
                Optional.of(
                    new AuditRules.Syslog(
                        "localhost", receiver.getLocalPort(), Optional.empty())))) {
      receiver.setSoTimeout(5000);
      trail.record(event("a"));
      trail.record(event("x".repeat(70_000)));
      trail.record(event("b"));
      assertThat(trail.send()).isEqualTo(new SendReport(2, 0, 1, ""));
      assertThat(datagram(receiver)).startsWith("<85>1 2026-03-14T").contains("word a");
      assertThat(datagram(receiver)).contains("word b").endsWith("</AuditMessage>");
    }
  }

  private static String datagram(DatagramSocket receiver) throws IOException {
    DatagramPacket packet = new DatagramPacket(new byte[70_000], 70_000);
    receiver.receive(packet);
    return new String(packet.getData(), 0, packet.getLength(), StandardCharsets.UTF_8);
  }

  private static List<String> words(CountingReceiver receiver) {
    return receiver.messages().stream()
        .map(message -> message.replaceAll("(?s).*<EventOutcomeDescription>(.*)</Event.*", "$1"))
        .map(rest -> rest.replaceAll("</EventOutcome.*", ""))
        .toList();
  }

  private static int freePort() throws IOException {
    try (java.net.ServerSocket free =
        new java.net.ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return free.getLocalPort();
    }
  }

  private static AuditEvent event(String word) {
    return Invented.EVENTS.login(Invented.ADA, true, AuditOutcome.SUCCESS, "word " + word);
  }

  private static Optional<AuditRules.Syslog> tls(int port, TlsFiles files) {
    return Optional.of(new AuditRules.Syslog("localhost", port, Optional.of(files)));
  }

  private AuditTrail trail(Optional<AuditRules.Syslog> syslog) {
    return new AuditTrail(new AuditRules(true, "vestibule", "", syslog), home, Invented.CLOCK);
  }
}
