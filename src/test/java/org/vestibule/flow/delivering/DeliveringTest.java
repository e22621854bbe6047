package org.vestibule.flow.delivering;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.BrokenBarrierException;
import java.util.concurrent.CyclicBarrier;
import java.util.function.Consumer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.base.Outcome;
import org.vestibule.flow.Practice;
import org.vestibule.flow.TestHome;
import org.vestibule.forward.Archive;
import org.vestibule.forward.ArchiveSession;
import org.vestibule.forward.CommitmentAnswer;
import org.vestibule.forward.DestinationRules;
import org.vestibule.forward.ForwardRules;
import org.vestibule.forward.Instance;
import org.vestibule.forward.Lines;
import org.vestibule.forward.OutgoingLines;
import org.vestibule.forward.Parcel;
import org.vestibule.forward.PresenceAnswer;
import org.vestibule.forward.ReportSink;
import org.vestibule.forward.StoreAnswer;
import org.vestibule.forward.StoreStatus;
import org.vestibule.keys.TlsFiles;
import org.vestibule.samples.Scene;
import org.vestibule.store.ledger.DeliveryState;

/** A whole delivery: several archives at once, the door for reports, and waiting. */
@Timeout(120) // a guard against waiting for ever, not a measure
class DeliveringTest {

  @TempDir private Path folder;
  private TestHome home;

  @BeforeEach
  void layOut() throws IOException {
    home = TestHome.in(folder);
    home.put("a.jpg", Scene.FRONTAL, 1);
    home.manifest("file,visit,view,mirror\na.jpg,V1,frontal,none\n");
    assertThat(home.ingest().filed()).hasSize(1);
  }

  private static DestinationRules to(String name) {
    return new DestinationRules(
        name,
        true,
        new DestinationRules.Web(URI.create("http://127.0.0.1:1"), TlsFiles.NONE, Optional.empty()),
        DestinationRules.Confirm.QUERY,
        Duration.ofMinutes(10),
        Duration.ofSeconds(5));
  }

  private static ForwardRules rules(Optional<ForwardRules.ReportPort> door, String... names) {
    return new ForwardRules(
        List.of(names).stream().map(DeliveringTest::to).toList(),
        ForwardRules.NONE.firstPause(),
        ForwardRules.NONE.longestPause(),
        3,
        ForwardRules.NONE.limit(),
        door,
        ForwardRules.SourceRemoval.NEVER);
  }

  /** Archives that take and show everything; before each connection something may happen. */
  private static Lines archives(Consumer<String> before) {
    return new Lines() {
      @Override
      public Outcome<Archive> archive(DestinationRules rules) {
        return Outcome.done(
            (forms, reports) -> {
              before.accept(rules.name());
              return Outcome.done(new Willing());
            });
      }

      @Override
      public Outcome<Door> listen(
          ForwardRules rules, ReportSink reports, Consumer<String> turnedAway) {
        return new OutgoingLines(TestHome.CLOCK).listen(rules, reports, turnedAway);
      }
    };
  }

  private static final class Willing implements ArchiveSession {
    @Override
    public StoreAnswer store(Parcel parcel) {
      return StoreStatus.answer(0, "");
    }

    @Override
    public CommitmentAnswer requestCommitment(String transactionUid, List<Instance> instances) {
      return new CommitmentAnswer.Refused(0x0122, "no such service");
    }

    @Override
    public void awaitReports(Duration most) {
      // none come
    }

    @Override
    public PresenceAnswer ask(List<Instance> instances) {
      return new PresenceAnswer.Answered(Map.of(instances.get(0).sopInstanceUid(), Map.of()));
    }

    @Override
    public void close() {
      // nothing is held
    }
  }

  private DeliveryReport deliver(ForwardRules rules, Lines lines) throws IOException {
    try (Practice practice = home.open(rules)) {
      return new Delivering(practice, lines, new Random(1), "forward")
          .run(Optional.empty(), Duration.ZERO, pause -> false)
          .orThrow();
    }
  }

  /** Each waits at its archive until the other two are there: one after the other never ends. */
  @Test
  void archivesAreServedAtTheSameTime() throws IOException {
    CyclicBarrier together = new CyclicBarrier(3);
    DeliveryReport report =
        deliver(
            rules(Optional.empty(), "attic", "cellar", "cloud"),
            archives(
                name -> {
                  try {
                    together.await();
                  } catch (InterruptedException | BrokenBarrierException e) {
                    throw new IllegalStateException(e);
                  }
                }));
    assertThat(report.needsPerson()).isFalse();
    assertThat(report.destinations())
        .extracting(one -> one.name() + " " + one.count(DeliveryState.CONFIRMED))
        .containsExactly("attic 1", "cellar 1", "cloud 1");
  }

  private static ForwardRules.ReportPort door(int port) {
    return new ForwardRules.ReportPort(port, "VESTIBULE", Optional.empty());
  }

  private static int freePort() throws IOException {
    try (ServerSocket free = new ServerSocket(0)) {
      return free.getLocalPort();
    }
  }

  @Test
  void whoIsTurnedAwayAtTheReportDoorIsNamed() throws IOException {
    int port = freePort();
    Set<String> words = Set.of("GET / HTTP/1.1\r\n\r\n");
    DeliveryReport report =
        deliver(
            rules(Optional.of(door(port)), "archive"),
            archives(name -> words.forEach(said -> knock(port, said))));
    assertThat(report.warnings())
        .containsExactly(
            "at the door for reports: the caller sent bytes that are no DICOM (a PDU of type 71):"
                + " check that host and port are those of a DICOM archive, and ask its maker");
    assertThat(report.needsPerson()).isTrue();
  }

  private static void knock(int port, String words) {
    try (Socket caller = new Socket(InetAddress.getLoopbackAddress(), port)) {
      caller.getOutputStream().write(words.getBytes(StandardCharsets.US_ASCII));
      while (caller.getInputStream().read() >= 0) {
        // until it hangs up, by when it has said why
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** As when "serve" listens there: that is well, and no reason to call a person. */
  @Test
  void aPortThatIsTakenIsANoteAlone() throws IOException {
    try (ServerSocket taken = new ServerSocket(0)) {
      DeliveryReport report =
          deliver(rules(Optional.of(door(taken.getLocalPort())), "archive"), archives(name -> {}));
      assertThat(report.notes())
          .containsExactly(
              "this run did not listen for reports of storage commitment, which is well if"
                  + " \"vestibule serve\" does: port "
                  + taken.getLocalPort()
                  + " for storage commitment reports can't be opened");
      assertThat(report.needsPerson()).isFalse();
    }
  }

  @Test
  void aDoorThatCanNeverOpenNeedsAPerson() throws IOException {
    ForwardRules.ReportPort wrong =
        new ForwardRules.ReportPort(freePort(), "A TITLE OF MORE THAN SIXTEEN", Optional.empty());
    DeliveryReport report = deliver(rules(Optional.of(wrong), "archive"), archives(name -> {}));
    assertThat(report.warnings())
        .singleElement()
        .asString()
        .startsWith("this run could not listen for reports of storage commitment: ");
    assertThat(report.needsPerson()).isTrue();
  }

  /** The first time nobody is there; within its patience the run waits and tries again. */
  @Test
  void aRunWithPatienceWaitsForAnArchiveThatComesBack() throws IOException {
    List<Duration> waited = new ArrayList<>();
    List<String> calls = new ArrayList<>();
    Lines lines =
        new Lines() {
          @Override
          public Outcome<Archive> archive(DestinationRules rules) {
            return Outcome.done(
                (forms, reports) -> {
                  calls.add(rules.name());
                  return calls.size() < 3
                      ? Outcome.refused("nobody is there", "see whether it runs")
                      : Outcome.done(new Willing());
                });
          }

          @Override
          public Outcome<Door> listen(
              ForwardRules rules, ReportSink reports, Consumer<String> turnedAway) {
            throw new AssertionError("no port is named");
          }
        };
    try (Practice practice = home.open(rules(Optional.empty(), "archive"))) {
      DeliveryReport report =
          new Delivering(practice, lines, new Random(1), "forward")
              .run(Optional.empty(), Duration.ofMinutes(10), waited::add)
              .orThrow();
      assertThat(report.needsPerson()).isFalse();
      assertThat(report.destinations().get(0).count(DeliveryState.CONFIRMED)).isEqualTo(1);
    }
    assertThat(waited).containsExactly(Duration.ofSeconds(61), Duration.ofSeconds(121));
  }

  private static ForwardRules removing(String... names) {
    ForwardRules usual = rules(Optional.empty(), names);
    return new ForwardRules(
        usual.destinations(),
        usual.firstPause(),
        usual.longestPause(),
        3,
        usual.limit(),
        Optional.empty(),
        ForwardRules.SourceRemoval.CONFIRMED);
  }

  /** One of two archives that have to confirm is away: the file stays until both have it. */
  @Test
  void aSourceStaysUntilTheLastArchiveHasConfirmed() throws IOException {
    Lines willing = archives(name -> {});
    Lines oneAway =
        new Lines() {
          @Override
          public Outcome<Archive> archive(DestinationRules rules) {
            return rules.name().equals("attic")
                ? willing.archive(rules)
                : Outcome.done(
                    (forms, reports) -> Outcome.refused("nobody is there", "see whether it runs"));
          }

          @Override
          public Outcome<Door> listen(
              ForwardRules rules, ReportSink reports, Consumer<String> turnedAway) {
            throw new AssertionError("no port is named");
          }
        };
    assertThat(deliver(removing("attic", "cellar"), oneAway).removed()).isZero();
    assertThat(home.inbox().resolve("a.jpg")).exists();
    assertThat(deliver(removing("attic", "cellar"), willing).removed()).isEqualTo(1);
    assertThat(home.inbox().resolve("a.jpg")).doesNotExist();
  }

  @Test
  void aFileThatWasChangedSinceItWasFiledStays() throws IOException {
    Path file = home.inbox().resolve("a.jpg");
    byte[] bytes = Files.readAllBytes(file);
    bytes[bytes.length / 2] ^= 1;
    Files.write(file, bytes);
    assertThat(deliver(removing("archive"), archives(name -> {})).removed()).isZero();
    assertThat(file).exists();
  }

  /** A folder in the object's place: what is kept here can't be read again. */
  @Test
  void aSourceStaysWhoseObjectCannotBeReadHere() throws IOException {
    try (Practice practice = home.open(removing("archive"))) {
      Path object =
          practice
              .store()
              .objects()
              .path(practice.store().ledger().kept().all().toList().get(0).sopUid())
              .orElseThrow();
      Lines willing = archives(name -> {});
      Files.copy(home.inbox().resolve("a.jpg"), folder.resolve("again.jpg"));
      deliverWith(practice, willing);
      assertThat(home.inbox().resolve("a.jpg")).doesNotExist();
      Files.copy(folder.resolve("again.jpg"), home.inbox().resolve("a.jpg"));
      Files.delete(object);
      Files.createDirectory(object);
      DeliveryReport report = deliverWith(practice, willing);
      assertThat(report.removed()).isZero();
      assertThat(report.warnings())
          .containsExactly(
              "a photograph that every archive has confirmed could not be removed from the inbox"
                  + " (IOException)");
    }
    assertThat(home.inbox().resolve("a.jpg")).exists();
  }

  private static DeliveryReport deliverWith(Practice practice, Lines lines) throws IOException {
    return new Delivering(practice, lines, new Random(1), "forward")
        .run(Optional.empty(), Duration.ZERO, pause -> false)
        .orThrow();
  }
}
