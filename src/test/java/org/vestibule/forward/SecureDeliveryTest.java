package org.vestibule.forward;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.net.httpserver.HttpsConfigurator;
import com.sun.net.httpserver.HttpsParameters;
import com.sun.net.httpserver.HttpsServer;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javax.net.ssl.SSLParameters;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;
import org.vestibule.base.Outcome;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;
import org.vestibule.keys.TlsFiles;
import org.vestibule.keys.TlsSide;

/** Everything that is said to an archive, over TLS with a certificate of ours; keys by OpenSSL. */
@Timeout(120) // a guard against waiting for ever, not a measure
class SecureDeliveryTest {

  private static final Instance OBJECT = new Instance("1.2.3", "2.25.1", "2.25.10", "2.25.11");
  private static final String IMPLICIT = "1.2.840.10008.1.2";

  @TempDir private static Path keys;

  @BeforeAll
  static void makeKeys() throws Exception {
    ExternalTool openssl = ExternalTool.require("openssl", "openssl");
    for (String who : new String[] {"archive", "practice"}) {
      ExternalTool.Result made =
          openssl.run(
              "req",
              "-x509",
              "-newkey",
              "rsa:2048",
              "-nodes",
              "-keyout",
              keys.resolve(who + ".key").toString(),
              "-out",
              keys.resolve(who + ".crt").toString(),
              "-days",
              "30",
              "-subj",
              "/CN=" + who,
              "-addext",
              "subjectAltName=DNS:localhost");
      assertThat(made.exitCode()).as(made.errors()).isZero();
    }
  }

  private static TlsFiles files(String own, String trusted) {
    return new TlsFiles(
        own.isEmpty() ? Optional.empty() : Optional.of(keys.resolve(own + ".crt")),
        own.isEmpty() ? Optional.empty() : Optional.of(keys.resolve(own + ".key")),
        Optional.empty(),
        Optional.of(keys.resolve(trusted + ".crt")));
  }

  private static DestinationRules rules(DestinationRules.Line line) {
    return new DestinationRules(
        "archive",
        true,
        line,
        DestinationRules.Confirm.COMMITMENT,
        Duration.ofMinutes(10),
        Duration.ofSeconds(20));
  }

  private static Parcel parcel() {
    byte[] bytes = new byte[1000];
    return new Parcel(
        OBJECT, IMPLICIT, Parcel.Kind.PHOTO, () -> new ByteArrayInputStream(bytes), 1000, 0);
  }

  private static FindPeer.Matches shows(DataSet question) {
    DataSet found =
        new DataSet()
            .put(Tags.SOPInstanceUID, "2.25.1")
            .put(Tags.StudyInstanceUID, "2.25.10")
            .put(Tags.SeriesInstanceUID, "2.25.11");
    return new FindPeer.Matches(0, List.of(found));
  }

  /** The archive asks for a certificate, as a server does that names whom it trusts. */
  @Test
  void storeCommitmentAndQueryGoOverTls() throws IOException {
    TlsSide side = files("archive", "practice").server(Clock.systemUTC()).orThrow();
    List<CommitmentReport> reports = Collections.synchronizedList(new ArrayList<>());
    try (FindPeer peer = new FindPeer(false, SecureDeliveryTest::shows, Optional.of(side))) {
      DestinationRules rules = rules(dicom(peer, files("practice", "archive")));
      try (ArchiveSession session =
          DicomLine.of(rules, Clock.systemUTC())
              .orThrow()
              .open(Set.of(new Archive.Form("1.2.3", IMPLICIT)), reports::add)
              .orThrow()) {
        assertThat(session.store(parcel())).isEqualTo(new StoreAnswer.Accepted(0, "", Map.of()));
        assertThat(session.requestCommitment("2.25.77", List.of(OBJECT)))
            .isEqualTo(new CommitmentAnswer.Taken());
        session.awaitReports(Duration.ofSeconds(20));
        assertThat(reports)
            .containsExactly(new CommitmentReport("2.25.77", List.of("2.25.1"), Map.of()));
        assertThat(((PresenceAnswer.Answered) session.ask(List.of(OBJECT))).found())
            .containsOnlyKeys("2.25.1");
      }
    }
  }

  private static DestinationRules.Dicom dicom(FindPeer peer, TlsFiles tls) {
    return new DestinationRules.Dicom(
        "localhost", peer.port(), "ARCHIVE", "VESTIBULE", Optional.of(tls));
  }

  @Test
  void withoutOurCertificateNothingIsSaidOverDicom() throws IOException {
    TlsSide side = files("archive", "practice").server(Clock.systemUTC()).orThrow();
    try (FindPeer peer = new FindPeer(false, SecureDeliveryTest::shows, Optional.of(side))) {
      Outcome<ArchiveSession> opened =
          DicomLine.of(rules(dicom(peer, files("", "archive"))), Clock.systemUTC())
              .orThrow()
              .open(Set.of(), report -> true);
      assertThat(opened).isInstanceOf(Outcome.Refused.class);
      assertThat(peer.questions).isEmpty();
    }
  }

  /** The JDK's web server, told to ask for a certificate and to trust the practice's alone. */
  @Test
  void overDicomWebOurCertificateIsShownWhereItIsAskedFor() throws IOException {
    TlsSide side = files("archive", "practice").server(Clock.systemUTC()).orThrow();
    HttpsServer server =
        HttpsServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.setHttpsConfigurator(
        new HttpsConfigurator(side.context()) {
          @Override
          public void configure(HttpsParameters parameters) {
            SSLParameters wanted = side.context().getDefaultSSLParameters();
            wanted.setNeedClientAuth(true);
            parameters.setSSLParameters(wanted);
          }
        });
    List<String> asked = Collections.synchronizedList(new ArrayList<>());
    server.createContext(
        "/dicom-web",
        exchange -> {
          asked.add(exchange.getRequestMethod());
          exchange.getRequestBody().readAllBytes();
          exchange.sendResponseHeaders(200, -1);
          exchange.close();
        });
    server.start();
    try {
      URI service = URI.create("https://localhost:" + server.getAddress().getPort() + "/dicom-web");
      try (ArchiveSession session = web(service, files("practice", "archive")).orThrow()) {
        assertThat(session.store(parcel())).isInstanceOf(StoreAnswer.Accepted.class);
      }
      assertThat(asked).containsExactly("OPTIONS", "POST");
      assertThat(web(service, files("", "archive"))).isInstanceOf(Outcome.Refused.class);
      assertThat(asked).as("nothing was said without it").hasSize(2);
    } finally {
      server.stop(0);
    }
  }

  private static Outcome<ArchiveSession> web(URI service, TlsFiles tls) {
    return WebArchive.of(
            rules(new DestinationRules.Web(service, tls, Optional.empty())), Clock.systemUTC())
        .orThrow()
        .open(Set.of(), report -> true);
  }
}
