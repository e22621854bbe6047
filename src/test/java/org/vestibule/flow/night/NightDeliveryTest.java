package org.vestibule.flow.night;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.file.AccessDeniedException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.RunningPeer;
import org.vestibule.base.Outcome;
import org.vestibule.flow.Practice;
import org.vestibule.flow.TestHome;
import org.vestibule.flow.delivering.DeliveryReport;
import org.vestibule.forward.Archive;
import org.vestibule.forward.DestinationRules;
import org.vestibule.forward.ForwardRules;
import org.vestibule.forward.LateArchive;
import org.vestibule.forward.Lines;
import org.vestibule.forward.ReportSink;
import org.vestibule.keys.TlsFiles;
import org.vestibule.samples.Scene;
import org.vestibule.store.ledger.DeliveryState;

/** A night's delivery, and what it must not keep the night from. */
class NightDeliveryTest {

  @TempDir private Path folder;
  private TestHome home;

  @BeforeEach
  void layOut() throws IOException {
    home = TestHome.in(folder);
    home.put("a.jpg", Scene.FRONTAL, 1);
    home.manifest("file,visit,view,mirror\na.jpg,V1,frontal,none\n");
    home.ingest();
  }

  private static ForwardRules toAnArchive() {
    return new ForwardRules(
        List.of(
            new DestinationRules(
                "archive",
                true,
                new DestinationRules.Web(
                    URI.create("http://127.0.0.1:1"), TlsFiles.NONE, Optional.empty()),
                DestinationRules.Confirm.QUERY,
                Duration.ofMinutes(10),
                Duration.ofSeconds(5))),
        ForwardRules.NONE.firstPause(),
        ForwardRules.NONE.longestPause(),
        3,
        ForwardRules.NONE.limit(),
        Optional.empty(),
        ForwardRules.SourceRemoval.NEVER);
  }

  /** After it come the backup and the night's mail. */
  @Test
  void whatBreaksInADeliveryDoesNotEndTheNight() throws IOException {
    Lines broken =
        new Lines() {
          @Override
          public Outcome<Archive> archive(DestinationRules rules) {
            throw new UncheckedIOException(
                new AccessDeniedException("/a/path/that/names/somebody"));
          }

          @Override
          public Outcome<Door> listen(
              ForwardRules rules, ReportSink reports, Consumer<String> turnedAway) {
            throw new AssertionError("no port is named");
          }
        };
    List<String> warnings = new ArrayList<>();
    try (Practice practice = home.open(toAnArchive())) {
      assertThat(NightDelivery.run(practice, broken, "night", time -> false, warnings)).isNull();
    }
    assertThat(warnings)
        .containsExactly(
            "the delivery to the archives broke off (AccessDeniedException): run \"vestibule"
                + " forward\", which goes on with the rest or says what is wrong");
  }

  private static ForwardRules toALateArchive(int archive, int door) {
    ForwardRules usual = toAnArchive();
    return new ForwardRules(
        List.of(
            new DestinationRules(
                "archive",
                true,
                new DestinationRules.Dicom(
                    "localhost", archive, "ARCHIVE", "VESTIBULE", Optional.empty()),
                DestinationRules.Confirm.COMMITMENT,
                Duration.ofMinutes(10),
                Duration.ofSeconds(20))),
        usual.firstPause(),
        usual.longestPause(),
        3,
        usual.limit(),
        Optional.of(new ForwardRules.ReportPort(door, "VESTIBULE", Optional.empty())),
        ForwardRules.SourceRemoval.NEVER);
  }

  /** The night waits for what is due soon, and meanwhile the archive calls. */
  @Test
  void aReportThatComesLaterInTheNightConfirms() throws IOException {
    int door = RunningPeer.freePort();
    List<Duration> waited = new ArrayList<>();
    List<Integer> answered = new ArrayList<>();
    List<String> warnings = new ArrayList<>();
    try (LateArchive archive = new LateArchive();
        Practice practice = home.open(toALateArchive(archive.port(), door))) {
      DeliveryReport report =
          NightDelivery.run(
              practice,
              "night",
              pause -> {
                waited.add(pause);
                answered.add(reported(archive, door));
                return false;
              },
              warnings);
      assertThat(warnings).isEmpty();
      assertThat(answered).containsExactly(0);
      assertThat(waited).containsExactly(Duration.ofSeconds(601));
      assertThat(report.destinations().get(0).count(DeliveryState.CONFIRMED)).isEqualTo(1);
      assertThat(report.destinations().get(0).confirmedNow()).isEqualTo(1);
      assertThat(report.needsPerson()).isFalse();
    }
  }

  private static int reported(LateArchive archive, int door) {
    try {
      return archive.report(door);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
