package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;
import org.vestibule.RunningPeer;
import org.vestibule.flow.TestHome;

/** Fetching orders by the command, with a worklist and without. */
class VisitsFetchCommandTest {

  @TempDir private Path folder;

  @Test
  void withoutAWorklistItSaysWhatIsMissing() throws IOException {
    TestHome home = TestHome.in(folder.resolve("home"));
    Asked asked = Asked.of(home, "visits", "fetch");
    assertThat(asked.code()).isEqualTo(3);
    assertThat(asked.err())
        .isEqualTo(
            "vestibule: the settings name no worklist.\n  What to do: add [worklist] with host, port"
                + " and title; or keep the visits in a list, as before.\n");
  }

  @Test
  void aDaysOrdersAreCountedAndWhatIsOddIsTold() throws Exception {
    TestHome home = TestHome.in(folder.resolve("home"));
    Path lists = Files.createDirectories(folder.resolve("lists/WORKLIST"));
    Files.createFile(lists.resolve("lockfile"));
    order(lists, "a", "ACC71", "Kite^Paper", "K7", "2.25.4711");
    order(lists, "b", "ACC72", "Stranger^Sam", "P1", "2.25.4712");
    try (RunningPeer peer =
        RunningPeer.ofToolkit(
            "wlmscpfs", "-s", "-dfr", "-csk", "-dfp", folder.resolve("lists").toString())) {
      Files.writeString(
          home.folder().resolve("vestibule.toml"),
          String.format(
              Locale.ROOT,
              """
          [practice]
          zone = "Europe/Vienna"
          [worklist]
          host = "localhost"
          port = %d
          title = "WORKLIST"
          line = "plain"
          """,
              peer.port()));
      try (var known = home.open()) {
        known
            .store()
            .ledger()
            .visits()
            .put(
                new org.vestibule.store.ledger.PatientRow(
                    "", "P1", "Tallgrass^Orla", null, null, ""),
                "A. Finch");
      }
      Asked asked = Asked.of(home, "visits", "fetch", "--day", "2026-03-12");
      assertThat(asked.err()).isEmpty();
      assertThat(asked.out())
          .isEqualTo(
              """
              Orders of 2026-03-12: 1 new, 0 changed, 0 as before.
                New visits: ACC71.

              Not taken over:
                order ACC72: the worklist gives this patient's number another name than the record, so it was not
                taken over; find out whose number it is, and have the wrong one put right.
              """);
      assertThat(asked.code()).isEqualTo(1);
    }
  }

  private void order(
      Path lists, String file, String accession, String name, String patient, String study)
      throws Exception {
    Path dump = folder.resolve(file + ".dump");
    Files.writeString(
        dump,
        String.format(
            Locale.ROOT,
            """
        (0008,0050) SH [%s]
        (0010,0010) PN [%s]
        (0010,0020) LO [%s]
        (0020,000d) UI [%s]
        (0040,0100) SQ
        (fffe,e000) -
        (0008,0060) CS [XC]
        (0040,0002) DA [20260312]
        (0040,0003) TM [1430]
        (0040,0009) SH [S%s]
        (fffe,e00d) -
        (fffe,e0dd) -
        """,
            accession,
            name,
            patient,
            study,
            file));
    ExternalTool.Result made =
        ExternalTool.require("dump2dcm", "dcmtk")
            .run("+te", dump.toString(), lists.resolve(file + ".wl").toString());
    assertThat(made.exitCode()).as(made.errors()).isZero();
  }
}
