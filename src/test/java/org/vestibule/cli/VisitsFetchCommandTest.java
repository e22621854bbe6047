package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;
import org.vestibule.RunningPeer;
import org.vestibule.flow.Practice;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;

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
      settings(home, peer.port());
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

  /** Where each fact of an order comes from, and where it has to stand in the object. */
  private static final String CARRIED =
      """
      00080050 00080050 Accession Number
      00080050 00400275/00080050 Accession Number in Request Attributes
      00080090 00080090 Referring Physician's Name
      00100010 00100010 Patient's Name
      00100020 00100020 Patient ID
      00100021 00100021 Issuer of Patient ID
      00100030 00100030 Patient's Birth Date
      00100040 00100040 Patient's Sex
      0020000D 0020000D Study Instance UID
      0020000D 00400275/0020000D Study Instance UID in Request Attributes
      00401001 00400275/00401001 Requested Procedure ID
      00321060 00400275/00321060 Requested Procedure Description
      00321060 00081030 Study Description
      00321064/00080100 00400275/00321064/00080100 Requested Procedure Code
      00321064/00080102 00400275/00321064/00080102 its scheme
      00321064/00080104 00400275/00321064/00080104 its meaning
      00321064/00080100 00081032/00080100 Procedure Code
      00400100/00400009 00400275/00400009 Scheduled Procedure Step ID
      00400100/00400007 00400275/00400007 Scheduled Procedure Step Description
      00400100/00400008/00080100 00400275/00400008/00080100 Scheduled Protocol Code
      00400100/00400006 00081050 Performing Physician's Name
      """;

  /**
   * From the worklist by "visits fetch" and "ingest" into the object; order and object are read by
   * pydicom. Which attribute becomes which: PS3.3 C.7.2.1, C.7.3.1.1 with table 10-9 (Request
   * Attributes), and PS3.17 "scheduled workflow" tables, from memory; where a worklist has no place
   * in an object of its own (who is scheduled), it is our own judgement.
   */
  @Test
  void whatTheWorklistSaysStandsInTheObject() throws Exception {
    TestHome home = TestHome.in(folder.resolve("home"));
    Path lists = Files.createDirectories(folder.resolve("lists/WORKLIST"));
    Files.createFile(lists.resolve("lockfile"));
    Path dump = folder.resolve("whole.dump");
    try (InputStream in = VisitsFetchCommandTest.class.getResourceAsStream("order.dump")) {
      Files.write(dump, Objects.requireNonNull(in).readAllBytes());
    }
    Path order = lists.resolve("whole.wl");
    ExternalTool.Result made =
        ExternalTool.require("dump2dcm", "dcmtk").run("+te", dump.toString(), order.toString());
    assertThat(made.exitCode()).as(made.errors()).isZero();
    try (RunningPeer peer =
        RunningPeer.ofToolkit(
            "wlmscpfs", "-s", "-dfr", "-csk", "-dfp", folder.resolve("lists").toString())) {
      settings(home, peer.port());
      Asked asked = Asked.of(home, "visits", "fetch", "--day", "2026-03-12");
      assertThat(asked.code()).as(asked.out() + asked.err()).isZero();
    }
    String photo = home.put("k.jpg", Scene.FRONTAL, 5 * 60 + 40);
    home.manifest("file,visit,view,mirror\nk.jpg,ACC71,frontal,none\n");
    Asked ingested = Asked.by("A. Finch", home, "ingest", "--at-once");
    assertThat(ingested.code()).as(ingested.out() + ingested.err()).isZero();
    JsonNode ordered = read(order);
    JsonNode object = read(object(home, photo));
    for (String line : CARRIED.lines().toList()) {
      String[] cells = line.split(" ", 3);
      JsonNode said = at(ordered, cells[0]);
      assertThat(said.isMissingNode()).as("the order has " + cells[2]).isFalse();
      assertThat(at(object, cells[1])).as(cells[2]).isEqualTo(said);
    }
    assertThat(at(object, "00080090").at("/Alphabetic").asText()).isEqualTo("Quillfeather^Bö");
  }

  private static Path object(TestHome home, String photo) throws IOException {
    try (Practice practice = home.open()) {
      String uid =
          practice
              .store()
              .ledger()
              .intents()
              .current(TestHome.hash(practice, photo))
              .get(0)
              .sopUid();
      return practice.store().objects().path(uid).orElseThrow();
    }
  }

  private static JsonNode read(Path file) throws Exception {
    ExternalTool.Result json =
        ExternalTool.require("python3", "python3-pydicom")
            .run(
                "-c",
                "import pydicom, sys; print(pydicom.dcmread(sys.argv[1],"
                    + " stop_before_pixels=True).to_json())",
                file.toString());
    assertThat(json.exitCode()).as(json.errors()).isZero();
    return new ObjectMapper().readTree(json.output());
  }

  /** The first value at a path of tags in the DICOM JSON model (PS3.18 F). */
  private static JsonNode at(JsonNode object, String path) {
    JsonNode at = object;
    for (String tag : path.split("/", -1)) {
      at = at.path(tag).path("Value").path(0);
    }
    return at;
  }

  private static void settings(TestHome home, int port) throws IOException {
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
            port));
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
