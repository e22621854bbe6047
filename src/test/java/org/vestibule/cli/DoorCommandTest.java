package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Part10Reader;
import org.vestibule.dicom.Tags;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;

/** One line in the settings, and objects say nothing of the patients; the site's people do. */
class DoorCommandTest {

  private static final String WHO = "Reed, Ada";

  @TempDir private Path folder;
  private TestHome home;
  private String id;

  @BeforeEach
  void layOut() throws IOException {
    home = TestHome.in(folder);
    id = home.put("a.jpg", Scene.FRONTAL, 1);
    home.put("b.jpg", Scene.FACE_SMILING, 2);
    home.manifest("file,visit,view,mirror\na.jpg,V1,frontal,none\nb.jpg,V1,face smiling,none\n");
  }

  private Asked ingest(String identity) throws IOException {
    Files.writeString(
        folder.resolve("vestibule.toml"), "[intake]\nidentity = \"" + identity + "\"\n");
    return Asked.by(WHO, home, "ingest", "--at-once");
  }

  private DataSet object() throws IOException {
    try (Stream<Path> all = Files.walk(folder.resolve("objects"))) {
      List<Path> objects = all.filter(file -> file.toString().endsWith(".dcm")).toList();
      assertThat(objects).hasSize(1);
      return Part10Reader.read(Files.readAllBytes(objects.get(0))).orThrow().data();
    }
  }

  @Test
  void oneLineTakesTheIdentityOut() throws IOException {
    Asked ingested = ingest("removed and dates moved");
    assertThat(ingested.code()).isEqualTo(1);
    assertThat(ingested.out()).contains("its view shows the face");
    DataSet object = object();
    assertThat(object.string(Tags.PatientIdentityRemoved)).contains("YES");
    String shown = Asked.of(home, "show", id).out();
    assertThat(shown)
        .contains("Orla Tallgrass", "P1", "2026-03-12, V1", "2026-03-12 09:01:00")
        .contains(
            object.string(Tags.PatientID).orElseThrow()
                + ", visit on "
                + object.date(Tags.StudyDate).orElseThrow());
    assertThat(Asked.of(home, "find", "tallgrass").out()).contains(id);
    assertThat(Asked.of(home, "verify").code()).isZero();
    assertThat(Asked.by(WHO, home, "repair").code()).isZero();
  }

  @Test
  void aDryRunSaysThatTheFaceWouldWait() throws IOException {
    Files.writeString(
        folder.resolve("vestibule.toml"), "[intake]\nidentity = \"removed and dates removed\"\n");
    Asked said = Asked.by(WHO, home, "ingest", "--at-once", "--dry-run");
    assertThat(said.out()).contains("its view shows the face");
    assertThat(folder.resolve("objects")).doesNotExist();
  }

  @Test
  void theLineIsReadExactly() throws IOException {
    Asked wrong = ingest("removed");
    assertThat(wrong.code()).isEqualTo(2);
    assertThat(wrong.err())
        .isEqualTo(
            """
            vestibule: vestibule.toml, line 2, intake.identity: "removed" is not a choice.
              What to do: write one of kept, removed and dates moved, removed and dates removed.
            """);
  }

  private Asked release(String purpose, String to, String... more) {
    return Asked.by(
        WHO,
        home,
        Stream.concat(
                Stream.of(
                    "release",
                    "make",
                    "--purpose",
                    purpose,
                    "--for",
                    "course",
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
                    id),
                Stream.of(more))
            .toArray(String[]::new));
  }

  private void consent(String purpose) {
    assertThat(
            Asked.by(
                    WHO,
                    home,
                    "consent",
                    "add",
                    "--patient",
                    "P1",
                    "--purpose",
                    purpose,
                    "--given",
                    "2026-03-12",
                    "--form",
                    "form 3")
                .code())
        .isZero();
  }

  @Test
  void aNamedCopyIsRefusedAndOneWithoutIdentityFitsTogether() throws IOException {
    ingest("removed and dates moved");
    consent("referral");
    consent("teaching");
    assertThat(release("referral", "named").err())
        .isEqualTo(
            "vestibule: photograph "
                + id
                + " is kept without identity, and copies for \"Referral for treatment\" say whose"
                + " they are.\n"
                + "  What to do: choose a purpose without identity, or leave it out.\n");
    assertThat(release("teaching", "out").err()).isEmpty();
    byte[] bytes = Files.readAllBytes(folder.resolve("out/dicom/copy-01.dcm"));
    DataSet copy = Part10Reader.read(bytes).orThrow().data();
    DataSet object = object();
    String day = copy.date(Tags.StudyDate).orElseThrow().toString();
    assertThat(copy.date(Tags.StudyDate).orElseThrow())
        .isBefore(object.date(Tags.StudyDate).orElseThrow());
    assertThat(Files.readString(folder.resolve("out/index.html")))
        .as("sheet and copy tell one day")
        .contains(day);
    assertThat(copy.string(Tags.PatientID)).isNotEqualTo(object.string(Tags.PatientID));
    assertThat(new String(bytes, StandardCharsets.ISO_8859_1))
        .doesNotContain("20260312", object.string(Tags.PatientID).orElseThrow());
  }

  /** Dates that are gone are removed, whatever a purpose would do with them. */
  @Test
  void aCopyOfAnObjectWithoutDatesDoesNotSayThatTheyWereMoved() throws IOException {
    ingest("removed and dates removed");
    consent("teaching");
    assertThat(release("teaching", "out").err()).isEmpty();
    byte[] bytes = Files.readAllBytes(folder.resolve("out/dicom/copy-01.dcm"));
    DataSet copy = Part10Reader.read(bytes).orThrow().data();
    assertThat(copy.string(Tags.LongitudinalTemporalInformationModified)).contains("REMOVED");
    assertThat(copy.items(Tags.DeidentificationMethodCodeSequence))
        .extracting(item -> item.string(Tags.CodeValue).orElse(""))
        .doesNotContain("113107");
  }
}
