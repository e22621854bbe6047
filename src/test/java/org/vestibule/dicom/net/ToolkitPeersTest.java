package org.vestibule.dicom.net;

import static org.assertj.core.api.Assertions.assertThat;
import static org.vestibule.dicom.net.AssociationTest.refused;

import java.io.IOException;
import java.net.InetAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.ExternalTool;
import org.vestibule.RunningPeer;
import org.vestibule.base.Outcome;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;
import org.vestibule.keys.TlsFiles;
import org.vestibule.keys.TlsSide;

/** Associations with the programs of DCMTK, which share nothing with ours. */
@Timeout(120) // a guard against waiting for ever, not a measure
class ToolkitPeersTest {

  private static final Duration WAIT = Duration.ofSeconds(20);
  private static final List<Offer> ECHO = List.of(Offer.ofService(NetUids.VERIFICATION));
  private static final AeTitle ARCHIVE = new AeTitle("ARCHIVE");
  private static final AeTitle OURS = new AeTitle("VESTIBULE");

  @TempDir static Path keys;
  @TempDir Path folder;

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
              key(who, "key"),
              "-out",
              key(who, "crt"),
              "-days",
              "30",
              "-subj",
              "/CN=" + who,
              "-addext",
              "subjectAltName=DNS:localhost,IP:127.0.0.1");
      assertThat(made.exitCode()).as(made.errors()).isZero();
    }
  }

  private static String key(String who, String kind) {
    return keys.resolve(who + "." + kind).toString();
  }

  private static TlsSide client(boolean withCertificate) {
    return new TlsFiles(
            withCertificate ? Optional.of(keys.resolve("practice.crt")) : Optional.empty(),
            withCertificate ? Optional.of(keys.resolve("practice.key")) : Optional.empty(),
            Optional.empty(),
            Optional.of(keys.resolve("archive.crt")))
        .client(Clock.systemUTC())
        .orThrow();
  }

  private static RemoteEntity remote(RunningPeer peer, Optional<TlsSide> tls, Duration wait) {
    return new RemoteEntity(
        "localhost", peer.port(), ARCHIVE, OURS, tls, new Timeouts(WAIT, WAIT, wait, WAIT, WAIT));
  }

  private static RemoteEntity remote(RunningPeer peer) {
    return remote(peer, Optional.empty(), WAIT);
  }

  private RunningPeer storage(String... more) throws IOException {
    Path received = Files.createDirectories(folder.resolve("received"));
    String[] options = {"-aet", "ARCHIVE", "-od", received.toString(), "+B", "+xa"};
    String[] all = Stream.of(options, more).flatMap(Arrays::stream).toArray(String[]::new);
    return RunningPeer.ofToolkit("storescp", all);
  }

  private FileToSend photograph(int number, int bytes) throws IOException {
    return FileToSend.of(Photographs.write(folder, "2.25.100" + number, bytes));
  }

  private List<Path> received() throws IOException {
    try (Stream<Path> files = Files.list(folder.resolve("received"))) {
      return files.sorted().toList();
    }
  }

  /** What the toolkit kept is, behind its own head, our data set byte for byte. */
  private void assertKept(FileToSend sent, Path kept) throws IOException {
    byte[] ours = Files.readAllBytes(sent.path());
    byte[] data = Arrays.copyOfRange(ours, (int) sent.dataStart(), ours.length);
    FileToSend read = FileToSend.of(kept);
    byte[] theirs = Files.readAllBytes(kept);
    assertThat(Arrays.copyOfRange(theirs, (int) read.dataStart(), theirs.length)).isEqualTo(data);
    assertThat(read.sopInstance()).isEqualTo(sent.sopInstance());
    assertThat(read.transferSyntax()).isEqualTo(sent.transferSyntax());
  }

  @ParameterizedTest
  @CsvSource({"4096", "16384", "131072"})
  void storesPhotographsOfAnySizeByteForByte(String mostBytes) throws IOException {
    List<FileToSend> sent =
        List.of(photograph(1, 2), photograph(2, 70_000), photograph(3, 3_000_000));
    try (RunningPeer peer = storage("-pdu", mostBytes)) {
      List<Offer> offers = List.of(Offer.of(sent.get(0)), ECHO.get(0));
      Association association = Association.open(remote(peer), offers).orThrow();
      assertThat(association.echo().orThrow().kind()).isEqualTo(Answer.Kind.SUCCESS);
      for (FileToSend file : sent) {
        assertThat(association.store(file).orThrow().sentence()).isEqualTo("done (status 0000)");
      }
      assertThat(association.release()).isEqualTo(Outcome.done(true));
    }
    List<Path> received = received();
    for (int i = 0; i < 3; i++) {
      assertKept(sent.get(i), received.get(i));
    }
  }

  @Test
  void storesByTlsWithOurCertificateWhereItIsAskedFor() throws IOException {
    FileToSend file = photograph(1, 400_000);
    try (RunningPeer peer =
        storage(
            "+tls", key("archive", "key"), key("archive", "crt"), "+cf", key("practice", "crt"))) {
      try (Association association =
          Association.open(remote(peer, Optional.of(client(true)), WAIT), List.of(Offer.of(file)))
              .orThrow()) {
        assertThat(association.store(file).orThrow().kind()).isEqualTo(Answer.Kind.SUCCESS);
        assertThat(association.release()).isEqualTo(Outcome.done(true));
      }
      assertKept(file, received().get(0));
      Outcome.Refused<Association> without =
          refused(Association.open(remote(peer, Optional.of(client(false)), WAIT), ECHO));
      assertThat(without.sentence())
          .isIn(
              "ARCHIVE at localhost:"
                  + peer.port()
                  + " does not accept our certificate, or asks for one and got none: name a"
                  + " certificate and key that the other side trusts",
              // where its alert is overtaken by the end of the connection
              "the connection to ARCHIVE at localhost:"
                  + peer.port()
                  + " was cut while we waited for the answer to our request for an association:"
                  + " see its log; it may not accept our certificate",
              "ARCHIVE at localhost:"
                  + peer.port()
                  + " closed the connection instead of the answer to our request for an"
                  + " association: see its log; it may not accept our certificate");
    }
  }

  @Test
  void storesByTlsWithoutACertificateOfOurs() throws IOException {
    FileToSend file = photograph(1, 400_000);
    try (RunningPeer peer = storage("+tls", key("archive", "key"), key("archive", "crt"), "-ic");
        Association association =
            Association.open(
                    remote(peer, Optional.of(client(false)), WAIT), List.of(Offer.of(file)))
                .orThrow()) {
      assertThat(association.store(file).orThrow().kind()).isEqualTo(Answer.Kind.SUCCESS);
      assertKept(file, received().get(0));
    }
  }

  @Test
  void tlsIsNeverSilentlyPlain() throws IOException {
    try (RunningPeer peer = storage()) {
      assertThat(
              refused(Association.open(remote(peer, Optional.of(client(false)), WAIT), ECHO))
                  .sentence())
          .isIn(
              "ARCHIVE at localhost:"
                  + peer.port()
                  + " does not speak TLS on this port: check the port, or have TLS switched on"
                  + " there; nothing was sent unprotected",
              "ARCHIVE at localhost:"
                  + peer.port()
                  + " closed the connection during the TLS handshake: check that the port is one"
                  + " for TLS and that our certificate is accepted there",
              "TLS with ARCHIVE at localhost:"
                  + peer.port()
                  + " failed: check that the port is one for TLS, and both sides' certificates");
    }
    try (RunningPeer peer = storage("+tls", key("archive", "key"), key("archive", "crt"), "-ic")) {
      assertThat(refused(Association.open(remote(peer), ECHO)).sentence())
          .contains("ARCHIVE at localhost:" + peer.port())
          .containsAnyOf("it may want TLS", "speaks TLS on this port");
    }
  }

  @Test
  void aRefusingArchiveGivesItsReason() throws IOException {
    try (RunningPeer peer = storage("--refuse")) {
      assertThat(refused(Association.open(remote(peer), ECHO)).reason())
          .isEqualTo(
              "ARCHIVE at localhost:"
                  + peer.port()
                  + " rejected the association: it gave no reason (result 1, source 1, reason 1)");
    }
  }

  @ParameterizedTest
  @CsvSource({
    "--abort-after,^ARCHIVE at localhost:[0-9]+ broke the association off: ",
    // it closes with our data unread, which may overtake its abort
    "--abort-during,(broke the association off|was cut)"
  })
  void anAbortingArchiveEndsTheAssociation(String option, String words) throws IOException {
    FileToSend file = photograph(1, 3_000_000);
    try (RunningPeer peer = storage(option)) {
      Association association = Association.open(remote(peer), List.of(Offer.of(file))).orThrow();
      Outcome.Refused<Answer> refused = refused(association.store(file));
      assertThat(refused.kind()).isEqualTo(Outcome.Kind.BUSY);
      assertThat(refused.reason()).containsPattern(words);
      assertThat(association.isOpen()).isFalse();
    }
  }

  @Test
  void aSlowArchiveIsGivenUp() throws IOException {
    FileToSend file = photograph(1, 70_000);
    try (RunningPeer peer = storage("--sleep-during", "30")) {
      Association association =
          Association.open(
                  remote(peer, Optional.empty(), Duration.ofMillis(500)), List.of(Offer.of(file)))
              .orThrow();
      assertThat(refused(association.store(file)).reason())
          .isEqualTo(
              "ARCHIVE at localhost:"
                  + peer.port()
                  + " was silent too long: we waited for the answer to our object");
    }
  }

  @Test
  void anArchiveThatWasKilledIsCalledAgain() throws IOException {
    FileToSend file = photograph(1, 100_000);
    List<Offer> offers = List.of(Offer.of(file));
    try (RunningPeer peer = storage()) {
      Association first = Association.open(remote(peer), offers).orThrow();
      first.store(file).orThrow();
      peer.kill();
      assertThat(refused(first.store(file)).kind()).isEqualTo(Outcome.Kind.BUSY);
      assertThat(refused(Association.open(remote(peer), offers)).reason())
          .isEqualTo("nothing takes connections for ARCHIVE at localhost:" + peer.port());
      peer.restart();
      try (Association second = Association.open(remote(peer), offers).orThrow()) {
        assertThat(second.store(file).orThrow().kind()).isEqualTo(Answer.Kind.SUCCESS);
      }
      assertKept(file, received().get(0));
    }
  }

  /** Worklist (PS3.4 K): one entry today, asked for by date and modality. */
  @Test
  void asksAWorklist() throws Exception {
    Path lists = Files.createDirectories(folder.resolve("lists/ARCHIVE"));
    Files.createFile(lists.resolve("lockfile"));
    Path dump = folder.resolve("entry.dump");
    Files.writeString(
        dump,
        """
        (0008,0005) CS [ISO_IR 192]
        (0008,0050) SH [ACC71]
        (0010,0010) PN [Kite^Paper]
        (0010,0020) LO [KITE7]
        (0020,000d) UI [2.25.4711]
        (0040,0100) SQ
        (fffe,e000) -
        (0008,0060) CS [XC]
        (0040,0001) AE [VESTIBULE]
        (0040,0002) DA [20260312]
        (0040,0003) TM [0900]
        (fffe,e00d) -
        (fffe,e0dd) -
        """);
    ExternalTool.Result made =
        ExternalTool.require("dump2dcm", "dcmtk")
            .run("+te", dump.toString(), lists.resolve("entry.wl").toString());
    assertThat(made.exitCode()).as(made.errors()).isZero();
    try (RunningPeer peer =
            RunningPeer.ofToolkit(
                "wlmscpfs", "-s", "-dfr", "-dfp", folder.resolve("lists").toString());
        Association association =
            Association.open(remote(peer), List.of(Offer.ofService(NetUids.MODALITY_WORKLIST_FIND)))
                .orThrow()) {
      assertThat(worklist(association, "20260312").answers())
          .extracting(a -> a.string(Tags.AccessionNumber).orElse(""))
          .containsExactly("ACC71");
      assertThat(worklist(association, "20260313").answers()).isEmpty();
    }
  }

  private static Found worklist(Association association, String day) {
    DataSet step = new DataSet().put(Tags.Modality, "XC").put(0x00400002, day).putEmpty(0x00400001);
    DataSet question =
        new DataSet().putEmpty(Tags.AccessionNumber).putEmpty(Tags.PatientID).put(0x00400100, step);
    Found found = association.find(NetUids.MODALITY_WORKLIST_FIND, question, 100).orThrow();
    assertThat(found.last().kind()).isEqualTo(Answer.Kind.SUCCESS);
    return found;
  }

  /** DCMTK's own caller finds our listener, with TLS and without, and is told who may call. */
  @Test
  void ourListenerIsFoundByTheirCaller() throws Exception {
    assertThat(theirEcho(Optional.empty(), "ARCHIVE")).isZero();
    assertThat(theirEcho(Optional.empty(), "STRANGER")).isNotZero();
    TlsSide server =
        new TlsFiles(
                Optional.of(keys.resolve("archive.crt")),
                Optional.of(keys.resolve("archive.key")),
                Optional.empty(),
                Optional.of(keys.resolve("practice.crt")))
            .server(Clock.systemUTC())
            .orThrow();
    String[] known = {
      "+tls", key("practice", "key"), key("practice", "crt"), "+cf", key("archive", "crt")
    };
    assertThat(theirEcho(Optional.of(server), "ARCHIVE", known)).isZero();
    assertThat(theirEcho(Optional.of(server), "ARCHIVE", "+tla", "-ic")).isNotZero();
    assertThat(theirEcho(Optional.of(server), "ARCHIVE")).isNotZero();
  }

  private static int theirEcho(Optional<TlsSide> tls, String calling, String... options)
      throws Exception {
    ListenerRules rules =
        new ListenerRules(
            InetAddress.getLoopbackAddress(), 0, OURS, Set.of(ARCHIVE), tls, Timeouts.DEFAULT, 2);
    ReportReceiver nobody =
        new ReportReceiver() {
          @Override
          public boolean report(AeTitle from, CommitmentReport report) {
            return false;
          }

          @Override
          public void turnedAway(String words) {}
        };
    try (ReportListener listener = ReportListener.start(rules, nobody).orThrow()) {
      String[] end = {
        "-to",
        "5",
        "-aet",
        calling,
        "-aec",
        "VESTIBULE",
        "127.0.0.1",
        Integer.toString(listener.port())
      };
      String[] all = Stream.of(options, end).flatMap(Arrays::stream).toArray(String[]::new);
      return ExternalTool.require("echoscu", "dcmtk").run(all).exitCode();
    }
  }
}
