package org.vestibule.encode;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.ExternalTool;
import org.vestibule.assign.Crop;
import org.vestibule.check.CheckReport;
import org.vestibule.dental.Mirror;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Part10Reader;
import org.vestibule.dicom.Part10Writer;
import org.vestibule.dicom.Tags;
import org.vestibule.dicom.TransferSyntax;
import org.vestibule.samples.PhoneJpeg;
import org.vestibule.samples.SampleRoll;
import org.vestibule.samples.Scene;

/** The note that photographs no longer count, as three independent programs read it. */
class RejectionNoteTest {

  private static final NoteIdentity IDENTITY = new NoteIdentity("2.25.9001", "2.25.9002");
  private static final LocalDateTime AT = LocalDateTime.of(2026, 3, 14, 7, 0, 5, 999_000_000);

  /** What dsrdump says of itself, not of the file. */
  private static final List<String> OWN_LIMITS =
      List.of(
          "W: The VR checker does not support this Specific Character Set: ISO_IR 192",
          "W: Check for template constraints not yet supported");

  @TempDir private Path folder;

  /** dciodvfy (dicom3tools) as an independent reading of PS3.3, dsrdump (DCMTK) of the tree. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "wrong-visit",
        "wrong-side",
        "unsafe",
        "quality",
        "blurred",
        "dark",
        "bright",
        "framing"
      })
  void independentProgramsTakeItForAKeyObjectSelection(String word) throws Exception {
    RejectionReason reason = RejectionReason.of(word).orElseThrow();
    Path file = Files.write(folder.resolve("note.dcm"), note(word));
    String findings = ExternalTool.require("dciodvfy", "dicom3tools").run(file.toString()).errors();
    assertThat(findings.strip()).isEqualTo("KeyObjectSelectionDocument");
    ExternalTool.Result tree =
        ExternalTool.require("dsrdump", "dcmtk").run("+Pu", "+Pl", file.toString());
    assertThat(tree.exitCode()).as(tree.errors()).isZero();
    assertThat(tree.errors().lines().filter(line -> !OWN_LIMITS.contains(line))).isEmpty();
    assertThat(tree.text())
        .contains("Key Object Selection Document")
        .contains(reason.title().meaning())
        .contains("Blåbær")
        .contains("2.25.1001")
        .contains("2.25.1002");
    if (reason.modifier() != null) {
      assertThat(tree.text()).contains(reason.modifier().meaning());
    }
  }

  /** Values of PS3.16 CID 7010 and CID 7011, edition 2026b. */
  @ParameterizedTest
  @CsvSource({
    "wrong-visit, 113038,",
    "wrong-side, 113037,",
    "unsafe, 113037,",
    "quality, 113001, 111220",
    "blurred, 113001, 111210",
    "dark, 113001, 111211",
    "bright, 113001, 111212",
    "framing, 113001, 111209"
  })
  void theTitleSaysOfWhatKindTheReasonIs(String word, String title, String modifier) {
    DataSet note = read(note(word));
    assertThat(note.item(Tags.ConceptNameCodeSequence).orElseThrow().string(Tags.CodeValue))
        .contains(title);
    List<String> modifiers =
        note.items(Tags.ContentSequence).stream()
            .filter(item -> item.string(Tags.RelationshipType).orElse("").equals("HAS CONCEPT MOD"))
            .map(item -> item.item(Tags.ConceptCodeSequence).orElseThrow())
            .map(code -> code.string(Tags.CodeValue).orElseThrow())
            .toList();
    assertThat(modifiers).isEqualTo(modifier == null ? List.of() : List.of(modifier));
  }

  @Test
  void itStandsInThePatientsContextAndNamesFrameAndCropInTheirSeries() {
    DataSet note = read(note("wrong-visit"));
    assertThat(note.string(Tags.PatientID)).contains("00417");
    assertThat(note.string(Tags.IssuerOfPatientID)).contains("OLDMILL");
    assertThat(note.string(Tags.StudyInstanceUID)).contains("2.25.1");
    assertThat(note.string(Tags.AccessionNumber)).contains("ACC-7");
    assertThat(note.string(Tags.SeriesInstanceUID)).contains("2.25.9002");
    assertThat(note.string(Tags.SeriesNumber)).contains("1001");
    assertThat(note.string(Tags.Modality)).contains("KO");
    assertThat(note.string(Tags.ContentDate)).contains("20260314");
    assertThat(note.string(Tags.ContentTime)).contains("070005");
    DataSet study = note.item(Tags.CurrentRequestedProcedureEvidenceSequence).orElseThrow();
    assertThat(study.string(Tags.StudyInstanceUID)).contains("2.25.1");
    assertThat(study.items(Tags.ReferencedSeriesSequence))
        .extracting(
            series -> series.string(Tags.SeriesInstanceUID).orElseThrow(),
            series ->
                series
                    .item(Tags.ReferencedSOPSequence)
                    .flatMap(object -> object.string(Tags.ReferencedSOPInstanceUID))
                    .orElseThrow())
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple("2.25.11", "2.25.1001"),
            org.assertj.core.groups.Tuple.tuple("2.25.12", "2.25.1002"));
  }

  @Test
  void theSameWordsGiveTheSameBytes() {
    assertThat(note("quality")).isEqualTo(note("quality")).isNotEqualTo(note("unsafe"));
  }

  @Test
  void checkKnowsItAndFindsWhatIsMissing() {
    assertThat(CheckReport.of("note.dcm", note("unsafe")).words())
        .isEqualTo(
            "note.dcm: a Key Object Selection Document, not a photograph; it names what it"
                + " selects\n");
    DataSet spoilt = read(note("unsafe"));
    DataSet study = spoilt.item(Tags.CurrentRequestedProcedureEvidenceSequence).orElseThrow();
    spoilt.put(
        Tags.CurrentRequestedProcedureEvidenceSequence,
        study.put(
            Tags.ReferencedSeriesSequence, study.items(Tags.ReferencedSeriesSequence).get(0)));
    spoilt.putEmpty(Tags.ContentDate);
    byte[] file = Part10Writer.write(spoilt, TransferSyntax.EXPLICIT_LITTLE_ENDIAN).orThrow();
    assertThat(CheckReport.of("note.dcm", file).words())
        .startsWith("note.dcm: not conformant (2 errors, 0 warnings)\n")
        .contains("is missing or empty; it must have a value (type 1)")
        .contains("leaves out an object that the content names");
  }

  private static byte[] note(String word) {
    byte[] photo = PhoneJpeg.builder(SampleRoll.picture(Scene.FRONTAL, 160, 128)).bytes();
    EncodeRequest request =
        Filed.request(
            Filed.decision("frontal", "11", Mirror.NONE, null, new Crop(0.1, 0.1, 0.8, 0.9)), 1);
    List<DataSet> objects =
        new Encoder(CameraFacts.standard())
            .encode(photo, request).orThrow().stream()
                .map(object -> read(object.toByteArray()))
                .toList();
    RejectionReason reason = RejectionReason.of(word).orElseThrow();
    return RejectionNote.write(objects, IDENTITY, reason, AT).orThrow();
  }

  private static DataSet read(byte[] file) {
    return Part10Reader.read(file).orThrow().data();
  }
}
