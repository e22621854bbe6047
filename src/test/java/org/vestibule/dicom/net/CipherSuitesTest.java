package org.vestibule.dicom.net;

import static org.assertj.core.api.Assertions.assertThat;
import static org.vestibule.dicom.net.AssociationTest.refused;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import java.net.InetAddress;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.ExternalTool;
import org.vestibule.RunningPeer;
import org.vestibule.keys.TlsFiles;
import org.vestibule.keys.TlsSide;

/**
 * What OpenSSL can agree on with us, as either side. Suites by OpenSSL's names; which are
 * recommended is RFC 9325 section 4.2 (the four for TLS 1.2) and 3.1.1 (nothing before TLS 1.2);
 * what it warns of is in section 4.1 and 7.3 (no forward secrecy: RSA key transport).
 */
@Timeout(120) // a guard against waiting for ever, not a measure
class CipherSuitesTest {

  /** Kind of key, version and suite: those of BCP 195 (RFC 9325 4.2) and of TLS 1.3. */
  @Target(ElementType.METHOD)
  @Retention(RetentionPolicy.RUNTIME)
  @ParameterizedTest
  @CsvSource({
    "RSA,-tls1_2,ECDHE-RSA-AES128-GCM-SHA256",
    "RSA,-tls1_2,ECDHE-RSA-AES256-GCM-SHA384",
    "ECDSA,-tls1_2,ECDHE-ECDSA-AES128-GCM-SHA256",
    "ECDSA,-tls1_2,ECDHE-ECDSA-AES256-GCM-SHA384",
    "RSA,-tls1_3,TLS_AES_128_GCM_SHA256",
    "RSA,-tls1_3,TLS_AES_256_GCM_SHA384",
    "RSA,-tls1_3,TLS_CHACHA20_POLY1305_SHA256",
  })
  private @interface RecommendedSuites {}

  private static final Duration WAIT = Duration.ofSeconds(20);
  private static final AeTitle ARCHIVE = new AeTitle("ARCHIVE");
  private static final AeTitle OURS = new AeTitle("VESTIBULE");

  @TempDir static Path keys;

  @BeforeAll
  static void makeKeys() throws Exception {
    make("RSA", "rsa:2048");
    make("ECDSA", "ec", "-pkeyopt", "ec_paramgen_curve:P-256");
  }

  private static void make(String kind, String... algorithm) throws Exception {
    List<String> words = new ArrayList<>(List.of("req", "-x509", "-newkey"));
    words.addAll(List.of(algorithm));
    words.addAll(List.of("-nodes", "-keyout", file(kind, "key"), "-out", file(kind, "crt")));
    words.addAll(List.of("-days", "30", "-subj", "/CN=archive"));
    words.addAll(List.of("-addext", "subjectAltName=DNS:localhost"));
    ExternalTool.Result made = openssl().run(words.toArray(new String[0]));
    assertThat(made.exitCode()).as(made.errors()).isZero();
  }

  private static ExternalTool openssl() {
    return ExternalTool.require("openssl", "openssl");
  }

  private static String file(String kind, String ending) {
    return keys.resolve(kind + "." + ending).toString();
  }

  private static String[] limits(String version, String suite) {
    return new String[] {version, version.equals("-tls1_3") ? "-ciphersuites" : "-cipher", suite};
  }

  private static String opened(String kind, String version, String suite) throws Exception {
    int port = RunningPeer.freePort();
    List<String> server = new ArrayList<>(List.of("s_server", "-accept", Integer.toString(port)));
    server.addAll(List.of("-key", file(kind, "key"), "-cert", file(kind, "crt"), "-quiet"));
    server.addAll(List.of(limits(version, suite)));
    TlsSide tls =
        new TlsFiles(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.of(Path.of(file(kind, "crt"))))
            .client(Clock.systemUTC())
            .orThrow();
    Timeouts timeouts = new Timeouts(WAIT, Duration.ofMillis(300), WAIT, WAIT, WAIT);
    try (RunningPeer peer = RunningPeer.of(openssl(), port, server.toArray(new String[0]))) {
      RemoteEntity remote =
          new RemoteEntity("localhost", peer.port(), ARCHIVE, OURS, Optional.of(tls), timeouts);
      String sentence =
          refused(Association.open(remote, List.of(Offer.ofService(NetUids.VERIFICATION))))
              .sentence();
      return sentence.replace(":" + port, "");
    }
  }

  /** OpenSSL keeps silent behind the handshake, since it speaks no DICOM. */
  @RecommendedSuites
  void anArchiveWithARecommendedSuiteIsSpokenWith(String kind, String version, String suite)
      throws Exception {
    assertThat(opened(kind, version, suite))
        .isEqualTo(
            "ARCHIVE at localhost was silent too long: we waited for the answer to our request for"
                + " an association: see its log; try again, or allow it more time in the settings");
  }

  @ParameterizedTest
  @CsvSource({
    "-tls1_1,DEFAULT:@SECLEVEL=0", // RFC 9325 3.1.1
    "-tls1_2,ECDHE-RSA-AES128-SHA256", // CBC
    "-tls1_2,ECDHE-RSA-AES256-SHA",
    "-tls1_2,AES128-GCM-SHA256", // RSA key transport
    "-tls1_2,AES256-SHA256",
    "-tls1_2,DHE-RSA-AES128-GCM-SHA256",
    "-tls1_3,TLS_AES_128_CCM_SHA256",
  })
  void anArchiveWithoutOneIsNotSpokenWith(String version, String suite) throws Exception {
    assertThat(opened("RSA", version, suite))
        .isEqualTo(
            "ARCHIVE at localhost and we have no TLS version and cipher suite in common, or it"
                + " wants a certificate: have TLS 1.2 or 1.3 with the suites of BCP 195 allowed"
                + " there");
  }

  /** What OpenSSL says of a call to our listener, and what the listener says of the caller. */
  private record Called(String theirs, String ours) {}

  private static Called called(String kind, String version, String suite) throws Exception {
    TlsSide tls =
        new TlsFiles(
                Optional.of(Path.of(file(kind, "crt"))),
                Optional.of(Path.of(file(kind, "key"))),
                Optional.empty(),
                Optional.empty())
            .server(Clock.systemUTC())
            .orThrow();
    ListenerRules rules =
        new ListenerRules(
            InetAddress.getLoopbackAddress(),
            0,
            OURS,
            Set.of(ARCHIVE),
            Optional.of(tls),
            Timeouts.DEFAULT,
            2);
    BlockingQueue<String> words = new LinkedBlockingQueue<>();
    ReportReceiver receiver =
        new ReportReceiver() {
          @Override
          public boolean report(AeTitle from, CommitmentReport report) {
            return false;
          }

          @Override
          public void turnedAway(String sentence) {
            words.add(sentence);
          }
        };
    try (ReportListener listener = ReportListener.start(rules, receiver).orThrow()) {
      List<String> call = new ArrayList<>(List.of("s_client", "-connect"));
      call.add("127.0.0.1:" + listener.port());
      call.addAll(List.of("-CAfile", file(kind, "crt")));
      call.addAll(List.of(limits(version, suite)));
      String theirs = openssl().run(call.toArray(new String[0])).text();
      return new Called(theirs, String.valueOf(words.poll(20, TimeUnit.SECONDS)));
    }
  }

  @RecommendedSuites
  void aCallerWithARecommendedSuiteIsHeard(String kind, String version, String suite)
      throws Exception {
    Called called = called(kind, version, suite);
    assertThat(called.theirs()).contains("Cipher is " + suite);
    assertThat(called.ours())
        .startsWith("the caller closed the connection instead of a request for an association");
  }

  @ParameterizedTest
  @CsvSource({
    "-tls1_1,DEFAULT:@SECLEVEL=0",
    "-tls1_2,ECDHE-RSA-AES128-SHA256",
    "-tls1_2,ECDHE-RSA-AES256-SHA",
    "-tls1_2,AES128-GCM-SHA256",
    "-tls1_2,AES256-SHA256",
    "-tls1_2,DHE-RSA-AES128-GCM-SHA256",
    "-tls1_3,TLS_AES_128_CCM_SHA256",
  })
  void aCallerWithoutOneIsTurnedAway(String version, String suite) throws Exception {
    Called called = called("RSA", version, suite);
    assertThat(called.theirs()).contains("Cipher is (NONE)");
    assertThat(called.ours())
        .isEqualTo(
            "the caller and we have no TLS version and cipher suite in common, or it wants a"
                + " certificate: have TLS 1.2 or 1.3 with the suites of BCP 195 allowed there");
  }
}
