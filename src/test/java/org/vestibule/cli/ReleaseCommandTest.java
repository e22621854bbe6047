package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;
import org.vestibule.check.PhotographicChecker;
import org.vestibule.check.Severity;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Part10Reader;
import org.vestibule.dicom.Tags;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;

/** Copies of an invented practice's photographs, from asking for them to taking them back. */
class ReleaseCommandTest {

  private static final String WHO = "Reed, Ada";

  @TempDir Path folder;
  private TestHome home;
  private static String frontal;
  private static String cropped;
  private static String face;
  private static String other;

  @TempDir private static Path template;

  /** Filed once; each test has a copy of the folder. */
  @BeforeAll
  static void file() throws IOException {
    TestHome home = TestHome.in(template);
    Files.writeString(
        template.resolve("visits.csv"),
        """
        visit,patient id,name,birth date,sex,start,end,referrer,dentist
        V1,P1,"Tallgrass, Orla",1990-01-02,F,2026-03-12 09:00,2026-03-12 10:00,Mossgrove^Ansel^^Dr,Quill^Bea^^Dr
        V2,P2,"Brightwater, Ned",1971-05-06,M,2026-03-12 11:00,2026-03-12 12:00,,
        """);
    frontal = home.put("frontal.jpg", Scene.FRONTAL, 1);
    cropped = home.put("cropped.jpg", Scene.UPPER_OCCLUSAL, 2);
    face = home.put("smile.jpg", Scene.FACE_SMILING, 3);
    other = home.put("other.jpg", TestHome.photo(Scene.RIGHT_BUCCAL, 125).orientation(1).bytes());
    home.manifest(
        """
        file,visit,view,teeth,mirror,incisors,crop
        frontal.jpg,V1,frontal,11,none,,
        cropped.jpg,V1,upper occlusal,16,as shot,top,0.2 0.25 0.8 0.75
        smile.jpg,V1,face smiling,,none,,
        other.jpg,V2,right buccal,,none,,
        """);
    assertThat(home.ingest().filed()).hasSize(4);
  }

  @BeforeEach
  void copyHome() throws IOException {
    try (Stream<Path> all = Files.walk(template)) {
      for (Path path : all.skip(1).toList()) {
        Files.copy(
            path,
            folder.resolve(template.relativize(path).toString()),
            StandardCopyOption.COPY_ATTRIBUTES);
      }
    }
    String visits = Files.readString(folder.resolve("visits.csv"));
    home = TestHome.in(folder);
    Files.writeString(folder.resolve("visits.csv"), visits);
  }

  private Asked consent(String patient, String purpose, String... more) {
    List<String> words =
        new ArrayList<>(
            List.of(
                "consent",
                "add",
                "--patient",
                patient,
                "--purpose",
                purpose,
                "--given",
                "2026-03-12",
                "--form",
                "form 3"));
    words.addAll(List.of(more));
    return Asked.by(WHO, home, words.toArray(String[]::new));
  }

  private Asked make(String purpose, String to, String... more) {
    List<String> words =
        new ArrayList<>(
            List.of(
                "release",
                "make",
                "--purpose",
                purpose,
                "--for",
                "spring course",
                "--asked-by",
                "Finch, Bo",
                "--why",
                "lecture on mirrors",
                "--to",
                to));
    words.addAll(List.of(more));
    return Asked.by(WHO, home, words.toArray(String[]::new));
  }

  private void assertRefused(Asked asked, String words) throws IOException {
    assertThat(asked.err()).isEqualTo(words);
    assertThat(asked.code()).isEqualTo(3);
    assertThat(asked.out()).isEmpty();
    try (Stream<Path> all = Files.list(folder)) {
      assertThat(all.map(path -> path.getFileName().toString()))
          .noneMatch(name -> name.startsWith("out") || name.startsWith(".release"));
    }
  }

  @Test
  void withoutConsentNothingLeaves() throws IOException {
    assertRefused(
        make("teaching", "out", "--looked-by", WHO, frontal),
        "vestibule: the patient of photograph "
            + frontal
            + " gave no consent to: Teaching.\n"
            + "  What to do: ask the patient, and record it with \"vestibule consent add\"; your"
            + " local law says what a consent has to look like.\n");
  }

  /**
   * Whoever has a copy under the wrong patient's name has to be told (common practice, no source).
   */
  @Test
  void aCorrectionTellsOfCopiesThatAreOut() {
    consent("P1", "teaching");
    assertThat(make("teaching", "gone", "--looked-by", WHO, frontal).code()).isZero();
    Asked moved = Asked.by(WHO, home, "move", frontal, "--visit", "V2", "--why", "wrong patient");
    assertThat(moved.code()).isEqualTo(1);
    assertThat(moved.out())
        .contains("Copies of it left the house as it was filed before. Tell whoever has them:")
        .contains("2026-001");
    assertThat(Asked.by(WHO, home, "reject", cropped, "--why", "not wanted").out())
        .doesNotContain("Copies of it");
  }

  /** The words for whom a copy is may name a dentist, and never the patient. */
  @Test
  void aReceiverNamedAfterThePatientStopsTheRelease() {
    consent("P1", "laboratory");
    Asked made =
        Asked.by(
            WHO,
            home,
            "release",
            "make",
            frontal,
            "--purpose",
            "laboratory",
            "--for",
            "Lab Nord, crown of Tallgrass",
            "--asked-by",
            "Finch, Bo",
            "--why",
            "crown",
            "--to",
            "leak");
    assertThat(made.code()).isNotZero();
    assertThat(folder.resolve("leak")).doesNotExist();
  }

  @Test
  void badRequestsAreRefusedInWords() throws IOException {
    consent("P1", "teaching");
    consent("P2", "teaching");
    consent("P1", "website");
    assertRefused(
        make("trading", "out", frontal),
        "vestibule: there is no purpose \"trading\".\n"
            + "  What to do: say one of: referral, laboratory, insurer, teaching, publication,"
            + " website, own-copy.\n");
    assertRefused(
        make("teaching", "out", frontal),
        """
        vestibule: nobody is named who looked at each picture for text and faces.
          What to do: have a person look, and give the name with --looked-by.
        """);
    assertRefused(
        make("teaching", "out", "--looked-by", WHO, frontal, other),
        "vestibule: these are photographs of 2 patients.\n"
            + "  What to do: check the ids; if they are meant to go together, add"
            + " --several-patients.\n");
    assertRefused(
        make("teaching", "out", "--looked-by", WHO),
        "vestibule: there is nothing to copy.\n  What to do: name at least one photograph.\n");
    assertRefused(
        make("website", "out", "--as", "dicom", "--looked-by", WHO, frontal),
        """
        vestibule: copies for "Website" are JPEG files only.
          What to do: ask for jpeg.
        """);
    assertRefused(
        make("teaching", "out", "--looked-by", WHO, face),
        "vestibule: photograph "
            + face
            + " may show the face, and the consent does not cover the face.\n"
            + "  What to do: leave it out, name the part without the face with --crop, or ask the"
            + " patient for a consent that does.\n");
    assertRefused(
        make("teaching", "out", "--looked-by", WHO, cropped + "-frame"),
        "vestibule: photograph "
            + cropped
            + " may show the face, and the consent does not cover the face.\n"
            + "  What to do: leave it out, name the part without the face with --crop, or ask the"
            + " patient for a consent that does.\n");
    Files.createDirectory(folder.resolve("taken"));
    assertRefused(
        make("teaching", "taken", "--looked-by", WHO, frontal),
        """
        vestibule: taken is already there.
          What to do: name another place; nothing was overwritten.
        """);
  }

  @Test
  void aTeachingSetIsConformingAndNamesNobody() throws Exception {
    consent("P1", "teaching", "--face");
    Asked made =
        make("teaching", "out", "--as", "dicom,jpeg", "--looked-by", WHO, frontal, cropped, face);
    assertThat(made.err()).isEmpty();
    assertThat(made.out())
        .isEqualTo("Release 2026-001: 3 photographs in out, searched and clean.\n");
    Path out = folder.resolve("out");
    assertThat(names(out))
        .containsExactly(
            "contact-sheet.pdf",
            "dicom/copy-01.dcm",
            "dicom/copy-02.dcm",
            "dicom/copy-03.dcm",
            "index.html",
            "jpeg/copy-01.jpg",
            "jpeg/copy-02.jpg",
            "jpeg/copy-03.jpg",
            "manifest.json");
    for (String name : names(out)) {
      String bytes = Files.readString(out.resolve(name), StandardCharsets.ISO_8859_1);
      assertThat(bytes)
          .as(name)
          .doesNotContain("Tallgrass", "2026-03-12", "20260312", "19900102", "1990-01-02");
    }
    DataSet first =
        Part10Reader.read(Files.readAllBytes(out.resolve("dicom/copy-01.dcm"))).orThrow().data();
    DataSet smile =
        Part10Reader.read(Files.readAllBytes(out.resolve("dicom/copy-03.dcm"))).orThrow().data();
    assertThat(codes(first)).containsExactly("113100", "113101", "113102", "113105", "113107");
    assertThat(codes(smile)).containsExactly("113100", "113101", "113105", "113107");
    assertThat(first.string(Tags.PatientID)).isEqualTo(smile.string(Tags.PatientID));
    assertThat(first.string(Tags.PatientID).orElseThrow()).startsWith("R-");
    assertThat(first.string(Tags.StudyInstanceUID)).isEqualTo(smile.string(Tags.StudyInstanceUID));
    assertThat(first.string(Tags.StudyDate).orElseThrow())
        .matches("20[12]\\d{5}")
        .isNotEqualTo("20260312");
    assertThat(first.string(Tags.ImageComments).orElseThrow()).startsWith("View: Frontal");
    for (int i = 1; i <= 3; i++) {
      Path dicom = out.resolve("dicom/copy-0" + i + ".dcm");
      assertThat(PhotographicChecker.check(Files.readAllBytes(dicom)))
          .noneMatch(finding -> finding.severity() == Severity.ERROR);
      ExternalTool.Result verified =
          ExternalTool.require("dciodvfy", "dicom3tools").run(dicom.toString());
      assertThat(verified.errors()).doesNotContain("Error");
    }
    JsonFiles.assertHashes(out);
  }

  /** exiftool and pdftotext as independent readers. */
  @Test
  void otherProgramsFindAnUprightBarePictureAndASheetWithSides() throws Exception {
    consent("P1", "teaching");
    make("teaching", "out", "--looked-by", WHO, frontal, cropped);
    Path jpeg = folder.resolve("out/jpeg/copy-01.jpg");
    String exif =
        ExternalTool.require("exiftool", "libimage-exiftool-perl")
            .run("-a", "-u", "-G1", "-s", "-ee", "-n", jpeg.toString())
            .text();
    assertThat(exif).containsPattern("\\[IFD0\\] +Orientation +: 1");
    assertThat(exif.lines().filter(line -> line.startsWith("[IFD0]"))).hasSize(1);
    assertThat(exif).doesNotContain("[GPS]", "[XMP", "[ExifIFD]", "Lumo", "Tallgrass");
    String sheet =
        ExternalTool.require("pdftotext", "poppler-utils")
            .run("-layout", folder.resolve("out/contact-sheet.pdf").toString(), "-")
            .text();
    assertThat(sheet)
        .contains("Photographs: Teaching", "patient's right", "patient's left", "R-", "Frontal")
        .contains("Release 2026-001")
        .doesNotContain("Tallgrass", "2026-03");
    String page = Files.readString(folder.resolve("out/index.html"));
    assertThat(page)
        .contains("\u2190 patient&#39;s right")
        .contains("upper right first molar")
        .doesNotContain("http:", "https:", "<script", "Tallgrass");
  }

  @Test
  void oneReleaseMadeAgainHasTheSameBytesAndAnotherHasOtherPseudonyms() throws Exception {
    consent("P1", "publication");
    assertThat(
            make("publication", "out1.zip", "--as", "dicom,jpeg", "--looked-by", WHO, frontal)
                .code())
        .isZero();
    assertThat(
            Asked.by(WHO, home, "release", "make", "--again", "2026-001", "--to", "out2.zip").err())
        .isEmpty();
    assertThat(Files.readAllBytes(folder.resolve("out1.zip")))
        .isEqualTo(Files.readAllBytes(folder.resolve("out2.zip")));
    try (ZipFile zip = new ZipFile(folder.resolve("out1.zip").toFile())) {
      assertThat(zip.stream().map(entry -> entry.getName()))
          .containsExactly(
              "contact-sheet.pdf",
              "dicom/copy-01.dcm",
              "index.html",
              "jpeg/copy-01.jpg",
              "manifest.json");
      assertThat(zip.stream().map(entry -> entry.getTimeLocal().getYear())).containsOnly(1980);
    }
    make("publication", "out3", "--as", "dicom", "--looked-by", WHO, frontal);
    try (ZipFile zip = new ZipFile(folder.resolve("out1.zip").toFile())) {
      DataSet one =
          Part10Reader.read(zip.getInputStream(zip.getEntry("dicom/copy-01.dcm")).readAllBytes())
              .orThrow()
              .data();
      DataSet two =
          Part10Reader.read(Files.readAllBytes(folder.resolve("out3/dicom/copy-01.dcm")))
              .orThrow()
              .data();
      assertThat(one.string(Tags.PatientID)).isNotEqualTo(two.string(Tags.PatientID));
      assertThat(one.string(Tags.StudyDate)).isEmpty();
    }
  }

  @Test
  void everythingIsOnRecordAndCanBeTakenBack() throws IOException {
    consent("P1", "teaching");
    make("teaching", "out", "--looked-by", WHO, frontal);
    String shown = Asked.of(home, "release", "show", "2026-001").out();
    assertThat(shown)
        .startsWith("Release 2026-001 of 2026-03-14, teaching\n  for       spring course\n")
        .contains("  asked by  Finch, Bo\n", "  made by   Reed, Ada\n", "lecture on mirrors")
        .contains("  looked    Reed, Ada on 2026-03-14\n")
        .containsPattern("copy-01 +" + frontal + " +P1 +R-");
    Asked back =
        Asked.by(
            WHO,
            home,
            "consent",
            "withdraw",
            "--patient",
            "P1",
            "--purpose",
            "teaching",
            "--on",
            "2026-03-14");
    assertThat(back.out())
        .isEqualTo(
            """
            Recorded: no new copies are made for this purpose.
            Copies that are out of the house; your law says what to do about them:
              release   day         purpose   photos  for            state
              2026-001  2026-03-14  teaching  1       spring course  out
            """);
    Asked again = Asked.by(WHO, home, "release", "make", "--again", "2026-001", "--to", "again");
    assertThat(again.err())
        .isEqualTo(
            "vestibule: the patient of photograph "
                + frontal
                + " took the consent back on 2026-03-14 (Teaching).\n"
                + "  What to do: leave the photograph out.\n");
    assertThat(Asked.by(WHO, home, "release", "withdraw", "2026-001", "--why", "asked to").out())
        .isEqualTo("Withdrew release 2026-001: ask spring course for the copies.\n");
    assertThat(Asked.of(home, "release", "list").out()).contains("withdrawn");
    assertThat(Asked.of(home, "consent", "list").out())
        .contains("P1", "given", "taken back", "form 3");
  }

  @Test
  void thePatientsOwnCopyNamesThemAndHoldsTheFace() throws Exception {
    Asked made = make("own-copy", "out", "--as", "dicom", face);
    assertThat(made.err()).isEmpty();
    DataSet copy =
        Part10Reader.read(Files.readAllBytes(folder.resolve("out/dicom/copy-01.dcm")))
            .orThrow()
            .data();
    assertThat(copy.string(Tags.PatientName)).contains("Tallgrass^Orla");
    assertThat(copy.string(Tags.StudyDate)).contains("20260312");
    assertThat(copy.contains(Tags.DeidentificationMethodCodeSequence)).isFalse();
    assertThat(Files.readString(folder.resolve("out/index.html")))
        .contains("Orla Tallgrass, P1", "2026-03-12");
  }

  @Test
  void aReceiverMeetsAPatientUnderTheSamePseudonymAgainAndNobodyElseDoes() throws Exception {
    consent("P1", "teaching");
    assertThat(pseudonym("one", "spring course"))
        .isEqualTo(pseudonym("two", "Spring Course"))
        .isNotEqualTo(pseudonym("three", "autumn course"));
  }

  private String pseudonym(String to, String recipient) throws IOException {
    Asked made =
        Asked.by(
            WHO,
            home,
            "release",
            "make",
            "--purpose",
            "teaching",
            "--for",
            recipient,
            "--asked-by",
            WHO,
            "--why",
            "lecture",
            "--looked-by",
            WHO,
            "--as",
            "dicom",
            "--to",
            to,
            frontal);
    assertThat(made.err()).isEmpty();
    return Part10Reader.read(Files.readAllBytes(folder.resolve(to + "/dicom/copy-01.dcm")))
        .orThrow()
        .data()
        .string(Tags.PatientID)
        .orElseThrow();
  }

  /** Two dentists with one title: a title is nobody's name. */
  @Test
  void aReferralHoldsWhatTheReceiverNeedsAndNoMore() throws Exception {
    consent("P1", "referral");
    Asked made = make("referral", "out", "--as", "dicom", frontal);
    assertThat(made.err()).isEmpty();
    byte[] file = Files.readAllBytes(folder.resolve("out/dicom/copy-01.dcm"));
    DataSet copy = Part10Reader.read(file).orThrow().data();
    assertThat(copy.string(Tags.PatientName)).contains("Tallgrass^Orla");
    assertThat(copy.string(Tags.ReferringPhysicianName)).contains("Mossgrove^Ansel^^Dr");
    assertThat(new String(file, StandardCharsets.UTF_8)).doesNotContain("Quill", "V1");
    assertThat(PhotographicChecker.check(file))
        .noneMatch(finding -> finding.severity() == Severity.ERROR);
  }

  @Test
  void aLaboratoryKnowsTheNumberAndAnInsurerSeesNoFace() throws Exception {
    consent("P1", "laboratory");
    consent("P1", "insurer", "--face");
    assertThat(make("laboratory", "out", "--as", "dicom,jpeg", frontal).err()).isEmpty();
    DataSet copy =
        Part10Reader.read(Files.readAllBytes(folder.resolve("out/dicom/copy-01.dcm")))
            .orThrow()
            .data();
    assertThat(copy.string(Tags.PatientID)).contains("P1");
    assertThat(copy.string(Tags.PatientName).orElseThrow()).startsWith("R-");
    Asked refused = make("insurer", "face", face);
    assertThat(refused.err())
        .isEqualTo(
            "vestibule: photograph "
                + face
                + " may show the face, and copies for \"Insurer\" never do.\n"
                + "  What to do: leave it out, or name the part without the face with --crop.\n");
    assertThat(folder.resolve("face")).doesNotExist();
  }

  /** The practice is called as a view is: the finished sheet says it, and nothing leaves. */
  @Test
  void oneFindStopsTheReleaseAndLeavesNothing() throws IOException {
    consent("P1", "teaching");
    Files.writeString(
        folder.resolve("vestibule.toml"), "[practice]\nname = \"Frontal, teeth together\"\n");
    Asked asked = make("teaching", "out", "--looked-by", WHO, frontal);
    assertThat(asked.code())
        .isEqualTo(ExitCode.of(org.vestibule.base.Outcome.Kind.DAMAGE).number());
    assertThat(asked.err())
        .isEqualTo(
            "vestibule: the finished contact-sheet.pdf holds a name, a number or a UID that must"
                + " not leave.\n"
                + "  What to do: nothing was handed over: leave the photograph out; if the patient,"
                + " a dentist or the practice is called like a word on the sheet, tell who looks"
                + " after this program.\n");
    try (Stream<Path> all = Files.list(folder)) {
      assertThat(all.map(path -> path.getFileName().toString()))
          .noneMatch(name -> name.startsWith("out") || name.startsWith(".release"));
    }
    assertThat(Asked.of(home, "release", "list").out())
        .isEqualTo("No copies have left the practice.\n");
  }

  /** The telephone's number is also the practice's: the sheet says it, and it isn't handed over. */
  @Test
  void whatTheOriginalsFileTellsOfTheCameraIsSearchedForToo() throws IOException {
    String serial = "spring course QX-0917";
    String id =
        home.put(
            "serial.jpg",
            TestHome.photo(Scene.LEFT_BUCCAL, 5).orientation(1).bodySerial(serial).bytes());
    home.manifest("file,visit,view,mirror\nserial.jpg,V1,left buccal,none\n");
    assertThat(home.ingest().filed()).hasSize(1);
    consent("P1", "referral");
    Files.writeString(
        folder.resolve("vestibule.toml"), "[practice]\nname = \"House " + serial + "\"\n");
    Asked stopped = make("referral", "out", id);
    assertThat(stopped.err())
        .startsWith("vestibule: the finished contact-sheet.pdf holds a name, a number or a UID");
    assertThat(folder.resolve("out")).doesNotExist();
    Files.delete(home.inbox().resolve("serial.jpg"));
    assertThat(make("referral", "out", id).err())
        .as("the ledger kept it when the photograph was filed")
        .isEqualTo(stopped.err());
  }

  private static List<String> codes(DataSet data) {
    return data.items(Tags.DeidentificationMethodCodeSequence).stream()
        .map(item -> item.string(Tags.CodeValue).orElseThrow())
        .toList();
  }

  private static List<String> names(Path out) throws IOException {
    try (Stream<Path> walk = Files.walk(out)) {
      return walk.filter(Files::isRegularFile)
          .map(path -> out.relativize(path).toString().replace('\\', '/'))
          .sorted()
          .toList();
    }
  }

  /** The manifest's SHA-256 (FIPS 180-4), computed here once more. */
  private static final class JsonFiles {
    @SuppressWarnings("unchecked")
    static void assertHashes(Path out) throws Exception {
      Map<String, Object> manifest =
          new com.fasterxml.jackson.databind.ObjectMapper()
              .readValue(out.resolve("manifest.json").toFile(), Map.class);
      Map<String, String> files = (Map<String, String>) manifest.get("files");
      assertThat(files).hasSize(8);
      for (Map.Entry<String, String> file : files.entrySet()) {
        byte[] hash =
            MessageDigest.getInstance("SHA-256")
                .digest(Files.readAllBytes(out.resolve(file.getKey())));
        assertThat(HexFormat.of().formatHex(hash)).isEqualTo(file.getValue());
      }
      assertThat(manifest)
          .containsEntry("purpose", "teaching")
          .containsEntry("identity", "removed");
      assertThat(manifest.toString()).doesNotContain("spring course", "2026-03-14");
    }
  }
}
