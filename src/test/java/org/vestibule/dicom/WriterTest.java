package org.vestibule.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;

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
        .hasToString(
            "Refused[reason=PatientName (0010,0010) PN holds characters that the data set's"
                + " character set lacks, advice=set SpecificCharacterSet to ISO_IR 192]");
  }
}
