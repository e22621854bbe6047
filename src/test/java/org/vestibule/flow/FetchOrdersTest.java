package org.vestibule.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;
import org.vestibule.RunningPeer;
import org.vestibule.assign.Visit;
import org.vestibule.base.Outcome;
import org.vestibule.check.CheckReport;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;
import org.vestibule.forward.worklist.WorklistRules;
import org.vestibule.samples.Scene;
import org.vestibule.store.ledger.Intent;

/** Orders out of DCMTK's worklist become visits, and stand in the objects. */
class FetchOrdersTest {

  private static final LocalDate DAY = LocalDate.of(2026, 3, 12);

  @TempDir private Path folder;

  private TestHome home;
  private Path lists;
  private RunningPeer peer;

  @BeforeEach
  void start() throws Exception {
    home = TestHome.in(folder.resolve("home"));
    lists = Files.createDirectories(folder.resolve("lists/WORKLIST"));
    Files.createFile(lists.resolve("lockfile"));
    peer =
        RunningPeer.ofToolkit(
            "wlmscpfs", "-s", "-dfr", "-csk", "-dfp", folder.resolve("lists").toString());
  }

  @AfterEach
  void stop() {
    peer.close();
  }

  @Test
  void anOrderBecomesAVisitWithItsNumbersAndItsStudyUid() throws Exception {
    order("a", "ISO_IR 192", "ACC71", "Kite^Pär", "K7", "2.25.4711", "1430", "XC");
    try (Practice practice = open()) {
      FetchedOrders fetched = fetch(practice);
      assertThat(fetched.added()).containsExactly("ACC71");
      assertThat(fetched.concerns()).isEmpty();
      Visit visit = new VisitBook(practice).all().orThrow().byKey("ACC71").orElseThrow();
      assertThat(visit.patient().name()).isEqualTo("Kite^Pär");
      assertThat(visit.patient().id()).isEqualTo("K7");
      assertThat(visit.patient().issuer()).isEqualTo("MILL");
      assertThat(visit.patient().birthDate()).isEqualTo(LocalDate.of(1980, 2, 29));
      assertThat(visit.accessionNumber()).isEqualTo("ACC71");
      assertThat(visit.referrer()).isEqualTo("Quillfeather^Bo");
      assertThat(visit.studyInstanceUid()).isEqualTo("2.25.4711");
      assertThat(visit.start()).isEqualTo(LocalDateTime.of(2026, 3, 12, 14, 30));
      assertThat(visit.end()).isEqualTo(LocalDateTime.of(2026, 3, 12, 15, 15));
      assertThat(fetch(practice).known()).as("a second time nothing is new").isEqualTo(1);
    }
  }

  @Test
  void namesInLatin1AreRead() throws Exception {
    order("a", "ISO_IR 100", "ACC72", "Blåbær^Signe", "K8", "2.25.4712", "1430", "XC");
    try (Practice practice = open()) {
      fetch(practice);
      assertThat(
              new VisitBook(practice).all().orThrow().byKey("ACC72").orElseThrow().patient().name())
          .isEqualTo("Blåbær^Signe");
    }
  }

  /**
   * Request Attributes (PS3.3 C.7.3.1), the worklist's study UID (PS3.4 K), and dciodvfy's word.
   */
  @Test
  void whatWasOrderedStandsInTheObject() throws Exception {
    order("a", "ISO_IR 192", "ACC71", "Kite^Paper", "K7", "2.25.4711", "1430", "XC");
    try (Practice practice = open()) {
      fetch(practice);
    }
    String id = home.put("k.jpg", Scene.FRONTAL, 5 * 60 + 40);
    home.manifest("file,visit,view,mirror\nk.jpg,ACC71,frontal,none\n");
    try (Practice practice = open()) {
      assertThat(home.ingest(practice).filed()).hasSize(1);
      DataSet object = new KeptPhoto(practice).object(id).orThrow();
      assertThat(object.string(Tags.StudyInstanceUID)).contains("2.25.4711");
      assertThat(object.string(Tags.AccessionNumber)).contains("ACC71");
      assertThat(object.string(Tags.StudyDescription)).contains("Eight photographs");
      assertThat(object.item(Tags.ProcedureCodeSequence).orElseThrow().string(Tags.CodeValue))
          .contains("ORTHO8");
      DataSet request = object.item(Tags.RequestAttributesSequence).orElseThrow();
      assertThat(request.string(Tags.RequestedProcedureID)).contains("RP1");
      assertThat(request.string(Tags.RequestedProcedureDescription)).contains("Eight photographs");
      assertThat(request.string(Tags.ScheduledProcedureStepID)).contains("SPa");
      assertThat(request.string(Tags.ScheduledProcedureStepDescription)).contains("Photographs");
      assertThat(request.string(Tags.StudyInstanceUID)).contains("2.25.4711");
      Intent intent =
          practice.store().ledger().intents().current(TestHome.hash(practice, id)).get(0);
      Path file = practice.store().objects().path(intent.sopUid()).orElseThrow();
      assertThat(CheckReport.of("k", Files.readAllBytes(file)).words())
          .isEqualTo("k: a conformant VL Photographic Image\n");
      assertThat(ExternalTool.require("dciodvfy", "dicom3tools").run(file.toString()).errors())
          .startsWith("VLPhotographicImage")
          .doesNotContain("Error");
      assertThat(Verify.run(practice)).isEmpty();
    }
  }

  @Test
  void aFiledVisitKeepsWhatItHadAndAChangeIsTold() throws Exception {
    order("a", "ISO_IR 192", "ACC71", "Kite^Paper", "K7", "2.25.4711", "1430", "XC");
    order("b", "ISO_IR 192", "ACC73", "Reed^Ida", "R1", "2.25.4713", "1600", "XC");
    try (Practice practice = open()) {
      assertThat(fetch(practice).added()).containsExactlyInAnyOrder("ACC71", "ACC73");
    }
    home.put("k.jpg", Scene.FRONTAL, 5 * 60 + 40);
    home.manifest("file,visit,view,mirror\nk.jpg,ACC71,frontal,none\n");
    try (Practice practice = open()) {
      home.ingest(practice);
    }
    order("a", "ISO_IR 192", "ACC71", "Kite^Paper", "K7", "2.25.4711", "1500", "XC");
    order("b", "ISO_IR 192", "ACC73", "Reed^Ida", "R1", "2.25.4713", "1630", "XC");
    try (Practice practice = open()) {
      FetchedOrders fetched = fetch(practice);
      assertThat(fetched.concerns())
          .containsExactly(
              "order ACC71 was changed (time) since photographs were filed under visit ACC71; the"
                  + " visit was left as it was filed");
      assertThat(fetched.changed()).containsExactly("order ACC73, visit ACC73: time changed");
      assertThat(practice.store().ledger().visits().visit("ACC71").orElseThrow().starts())
          .isEqualTo("2026-03-12T14:30");
      assertThat(practice.store().ledger().visits().visit("ACC73").orElseThrow().starts())
          .isEqualTo("2026-03-12T16:30");
    }
    Files.delete(lists.resolve("b.wl"));
    try (Practice practice = open()) {
      assertThat(fetch(practice).notes())
          .containsExactly(
              "order ACC73 is on the worklist no more; visit ACC73 stays, and nothing is filed under"
                  + " it yet");
      assertThat(new VisitBook(practice).all().orThrow().byKey("ACC73")).isPresent();
    }
  }

  @Test
  void anotherPatientUnderTheSameOrderOrNumberIsNeverTakenOver() throws Exception {
    order("a", "ISO_IR 192", "ACC71", "Kite^Paper", "K7", "2.25.4711", "1430", "XC");
    try (Practice practice = open()) {
      fetch(practice);
    }
    order("a", "ISO_IR 192", "ACC71", "Reed^Ida", "R1", "2.25.4711", "1430", "XC");
    order("c", "ISO_IR 192", "ACC74", "Stranger^Sam", "P1", "2.25.4714", "1700", "XC");
    try (Practice practice = open()) {
      FetchedOrders fetched = fetch(practice);
      assertThat(fetched.added()).isEmpty();
      assertThat(fetched.concerns())
          .containsExactlyInAnyOrder(
              "order ACC71 is another patient's than when it was fetched before; visit ACC71 was"
                  + " left as it is: find out whose it is before anything is filed under it",
              "order ACC74: the worklist gives this patient's number another name than the record,"
                  + " so it was not taken over; find out whose number it is, and have the wrong one"
                  + " put right");
      assertThat(
              new VisitBook(practice).all().orThrow().byKey("ACC71").orElseThrow().patient().id())
          .isEqualTo("K7");
    }
  }

  @Test
  void twoNamesUnderOneNumberInTheSameAnswerAreTold() throws Exception {
    order("a", "ISO_IR 192", "ACC71", "Kite^Paper", "K7", "2.25.4711", "1430", "XC");
    order("b", "ISO_IR 192", "ACC75", "Reed^Ida", "K7", "2.25.4715", "1600", "XC");
    try (Practice practice = open()) {
      FetchedOrders fetched = fetch(practice);
      assertThat(fetched.added()).hasSize(1);
      assertThat(fetched.concerns())
          .singleElement()
          .asString()
          .contains("the worklist gives this patient's number another name than the record");
    }
  }

  /** The practice's own list knows the visit already, by its accession number. */
  @Test
  void anOrderForAVisitOfTheListIsLaidToIt() throws Exception {
    Files.writeString(
        home.folder().resolve("visits.csv"),
        """
        visit,patient id,name,start,end,accession number
        V9,K7,"Kite, Paper",2026-03-12 14:00,2026-03-12 15:00,ACC71
        """);
    order("a", "ISO_IR 192", "ACC71", "Kite^Paper", "K7", "2.25.4711", "1430", "XC");
    try (Practice practice = open()) {
      FetchedOrders fetched = fetch(practice);
      assertThat(fetched.added()).isEmpty();
      assertThat(fetched.changed()).containsExactly("visit V9 is the one of order ACC71 now");
      Visit visit = new VisitBook(practice).all().orThrow().byKey("V9").orElseThrow();
      assertThat(visit.studyInstanceUid()).isEqualTo("2.25.4711");
      assertThat(visit.start())
          .as("the list counts")
          .isEqualTo(LocalDateTime.of(2026, 3, 12, 14, 0));
      assertThat(visit.order()).isNotNull();
    }
  }

  @Test
  void ordersForOtherModalitiesAndDaysAreNotFetched() throws Exception {
    order("a", "ISO_IR 192", "ACC71", "Kite^Paper", "K7", "2.25.4711", "1430", "CT");
    try (Practice practice = open()) {
      assertThat(fetch(practice).added()).isEmpty();
    }
  }

  @Test
  void withoutAWorklistNothingIsAskedAndTheListGoesOn() throws IOException {
    try (Practice practice = home.open()) {
      assertThat(new VisitOrders(practice).fetch(DAY, "Ada"))
          .isEqualTo(
              Outcome.refused(
                  "the settings name no worklist",
                  "add [worklist] with host, port and title; or keep the visits in a list, as"
                      + " before"));
      assertThat(new VisitBook(practice).all().orThrow().visits()).hasSize(2);
    }
  }

  private static FetchedOrders fetch(Practice practice) throws IOException {
    return new VisitOrders(practice).fetch(DAY, "Ada").orThrow();
  }

  private Practice open() throws IOException {
    Settings settings =
        SettingsWith.worklist(
            Settings.defaults(home.folder(), TestHome.ZONE),
            new WorklistRules(
                "localhost",
                peer.port(),
                "WORKLIST",
                "VESTIBULE",
                Optional.empty(),
                "",
                "XC",
                Duration.ofMinutes(45)));
    return Practice.open(home.folder(), settings, TestHome.CLOCK, true).orThrow();
  }

  /** Lays an order into the worklist's folder; dump2dcm (DCMTK) makes its file. */
  private void order(
      String file,
      String charset,
      String accession,
      String name,
      String patient,
      String study,
      String time,
      String modality)
      throws Exception {
    String text =
        String.format(
            Locale.ROOT,
            """
        (0008,0005) CS [%s]
        (0008,0050) SH [%s]
        (0008,0090) PN [Quillfeather^Bo]
        (0010,0010) PN [%s]
        (0010,0020) LO [%s]
        (0010,0021) LO [MILL]
        (0010,0030) DA [19800229]
        (0010,0040) CS [F]
        (0020,000d) UI [%s]
        (0032,1060) LO [Eight photographs]
        (0032,1064) SQ
        (fffe,e000) -
        (0008,0100) SH [ORTHO8]
        (0008,0102) SH [99MILL]
        (0008,0104) LO [Eight photographs]
        (fffe,e00d) -
        (fffe,e0dd) -
        (0040,0100) SQ
        (fffe,e000) -
        (0008,0060) CS [%s]
        (0040,0001) AE [CHAIR1]
        (0040,0002) DA [20260312]
        (0040,0003) TM [%s]
        (0040,0006) PN [Heron^Flo]
        (0040,0007) LO [Photographs]
        (0040,0009) SH [SP%s]
        (fffe,e00d) -
        (fffe,e0dd) -
        (0040,1001) SH [RP1]
        """,
            charset,
            accession,
            name,
            patient,
            study,
            modality,
            time,
            file);
    Charset written =
        charset.equals("ISO_IR 100") ? StandardCharsets.ISO_8859_1 : StandardCharsets.UTF_8;
    Path dump = Files.write(folder.resolve(file + ".dump"), text.getBytes(written));
    ExternalTool.Result made =
        ExternalTool.require("dump2dcm", "dcmtk")
            .run("+te", dump.toString(), lists.resolve(file + ".wl").toString());
    assertThat(made.exitCode()).as(made.errors()).isZero();
    assertThat(List.of(made.errors())).isNotNull();
  }
}
