package org.vestibule.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;
import org.vestibule.base.Outcome;

/** What we write, as an independent toolkit (DCMTK's dcmdump) reads it. */
class WriterTest {

  @TempDir Path folder;

  static DataSet sample() {
    return new DataSet()
        .put(Tags.SpecificCharacterSet, "ISO_IR 192")
        .put(Tags.ImageType, "ORIGINAL", "PRIMARY")
        .put(Tags.SOPClassUID, "1.2.840.10008.5.1.4.1.1.77.1.4")
        .put(Tags.SOPInstanceUID, "2.25.1")
        .put(Tags.StudyDate, LocalDate.of(2026, 3, 5))
        .put(Tags.StudyTime, LocalTime.of(9, 7, 5))
        .put(
            Tags.AcquisitionDateTime,
            OffsetDateTime.of(2026, 3, 5, 9, 7, 5, 250_000_000, ZoneOffset.ofHours(1)))
        .put(Tags.PatientName, "Müller^Anna=山田")
        .putEmpty(Tags.AccessionNumber)
        .put(Tags.Rows, 480)
        .put(Tags.FocalLength, 4.25)
        .put(
            Tags.ViewCodeSequence,
            new DataSet().put(Tags.CodeValue, "260499007").put(Tags.CodingSchemeDesignator, "SCT"))
        .put(Tags.AcquisitionContextSequence, List.of())
        .putFragments(Tags.PixelData, new byte[] {(byte) 0xFF, (byte) 0xD8, 1});
  }

  @Test
  void dcmdumpReadsAnEncapsulatedObject() throws Exception {
    byte[] file = Part10Writer.write(sample(), TransferSyntax.JPEG_BASELINE).orThrow();
    Path path = Files.write(folder.resolve("a.dcm"), file);

    ExternalTool.Result dump =
        ExternalTool.require("dcmdump", "dcmtk").run("+U8", "+L", path.toString());

    assertThat(dump.errors()).isEmpty();
    assertThat(dump.text())
        .contains("JPEGBaseline")
        .contains("(0008,0008) CS [ORIGINAL\\PRIMARY]")
        .contains("(0008,0020) DA [20260305]")
        .contains("(0008,0030) TM [090705]")
        .contains("(0008,002a) DT [20260305090705.250000+0100]")
        .contains("(0008,0050) SH (no value available)")
        .contains("(0010,0010) PN [Müller^Anna=山田]")
        .contains("(0028,0010) US 480")
        .contains("(0054,0220) SQ")
        .contains("(0008,0100) SH [260499007]")
        .contains("ff\\d8\\01\\00");
  }

  @Test
  void refusesWhatTheCharacterSetLacks() {
    DataSet data = sample().remove(Tags.SpecificCharacterSet);

    assertThat(DataSetWriter.write(data, TransferSyntax.EXPLICIT_LITTLE_ENDIAN))
        .isEqualTo(
            Outcome.refused(
                "PatientName (0010,0010) PN holds characters that the data set's character set"
                    + " lacks",
                "set SpecificCharacterSet to ISO_IR 192"));
  }

  /** Our own objects, explicit and implicit, as pydicom reads them, element by element. */
  @Test
  void pydicomReadsWhatWeWrite() throws Exception {
    DataSet data =
        sample()
            .put(Tags.PixelData, new byte[] {1, 2, 3, 4})
            .put(Tags.ICCProfile, new byte[] {1, 2, 3})
            .put(Tags.LensSpecification, "4.2", "4.2", "1.6", "1.6");
    List<Path> files = new ArrayList<>();
    for (TransferSyntax syntax :
        List.of(TransferSyntax.EXPLICIT_LITTLE_ENDIAN, TransferSyntax.IMPLICIT_LITTLE_ENDIAN)) {
      byte[] bytes = Part10Writer.write(data, syntax).orThrow();
      files.add(Files.write(folder.resolve(syntax.uid() + ".dcm"), bytes));
    }
    List<JsonNode> theirs = new Independent(folder).read(files);
    for (int i = 0; i < files.size(); i++) {
      DicomFile file = Part10Reader.read(Files.readAllBytes(files.get(i))).orThrow();
      assertThat(Independent.difference(Independent.ours(file), theirs.get(i), "")).isEmpty();
      assertThat(file.data().string(Tags.PatientName)).contains("Müller^Anna=山田");
    }
  }

  @Test
  void refusesWhatTheFormCanNotHold() {
    assertThat(DataSetWriter.write(sample(), TransferSyntax.IMPLICIT_LITTLE_ENDIAN))
        .isEqualTo(
            Outcome.refused(
                "PixelData (7FE0,0010) OB is encapsulated, which implicit VR can't hold",
                "write it with the transfer syntax of its compression"));
    DataSet wordy = new DataSet().put(Tags.ImageComments, "x".repeat(65536));
    assertThat(DataSetWriter.write(wordy, TransferSyntax.EXPLICIT_LITTLE_ENDIAN))
        .isEqualTo(
            Outcome.refused(
                "ImageComments (0020,4000) LT is 65536 bytes long, more than 65534",
                "shorten its value"));
    assertThat(Part10Writer.write(new DataSet(), TransferSyntax.JPEG_BASELINE))
        .isEqualTo(
            Outcome.refused(
                "the data set lacks SOPClassUID or SOPInstanceUID, which the file header repeats",
                "put both"));
    DataSet mixed = sample().put(Tags.TransferSyntaxUID, "1.2");
    assertThat(Part10Writer.write(mixed, TransferSyntax.JPEG_BASELINE))
        .isEqualTo(
            Outcome.refused(
                "the data set holds TransferSyntaxUID (0002,0010) UI, which is not an element of a"
                    + " data set",
                "remove it: groups 0000 to 0006 belong to messages, file headers and directories"));
  }
}
