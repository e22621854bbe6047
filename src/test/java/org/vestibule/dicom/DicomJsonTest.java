package org.vestibule.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.vestibule.base.Outcome;

/** The JSON model written and read back; what it looks like is compared in ReaderTest. */
class DicomJsonTest {

  @Test
  void aDataSetComesBackEqual() {
    DataSet data =
        WriterTest.sample()
            .remove(Tags.PixelData)
            .put(Tags.ICCProfile, new byte[] {1, 2, 3, 4})
            .put(Tags.LensSpecification, "4.20", "4.2", "1.60", "")
            .put(Dictionary.tag("SelectorFDValue").orElseThrow(), Double.NaN, 0.1)
            .put(Dictionary.tag("SelectorUVValue").orElseThrow(), "18446744073709551615")
            .put(Dictionary.tag("SelectorATValue").orElseThrow(), "7FE00010");

    String json = DicomJson.write(data).orThrow();

    DataSet read = DicomJson.read(json, uri -> Optional.empty()).orThrow();
    assertThat(read).isEqualTo(data);
    assertThat(read.strings(Tags.LensSpecification)).containsExactly("4.20", "4.2", "1.60", "");
    assertThat(json).contains("\"Ideographic\":\"山田\"");
  }

  @Test
  void bulkDataStandElsewhere() {
    String json =
        DicomJson.write(
                new DataSet().put(Tags.ICCProfile, new byte[] {1, 2}),
                element -> Optional.of("bulk/" + element.keyword()))
            .orThrow();

    assertThat(json)
        .isEqualTo("{\"00282000\":{\"vr\":\"OB\",\"BulkDataURI\":\"bulk/ICCProfile\"}}");
    DataSet read =
        DicomJson.read(
                json,
                uri -> Optional.of(uri.equals("bulk/ICCProfile") ? new byte[] {1, 2} : new byte[0]))
            .orThrow();
    assertThat(read.bytes(Tags.ICCProfile)).containsExactly(1, 2);
    assertThat(DicomJson.read(json, uri -> Optional.empty()))
        .isEqualTo(refusal("(0028,2000) stands at a BulkDataURI that can't be had"));
  }

  @Test
  void encapsulatedPixelsNeedAPlace() {
    assertThat(DicomJson.write(WriterTest.sample()))
        .isEqualTo(
            Outcome.refused(
                "PixelData (7FE0,0010) OB is encapsulated, which JSON can't hold inline",
                "give a BulkDataURI where its frames can be had"));
  }

  @Test
  void whatIsNotTheModelIsRefused() {
    assertThat(read("[]")).isEqualTo(refusal("a data set must be a JSON object"));
    assertThat(read("{\"PatientName\":{}}"))
        .isEqualTo(refusal("a name is not a tag of eight hexadecimal digits"));
    assertThat(read("{\"00100010\":{\"vr\":\"XX\"}}"))
        .isEqualTo(refusal("(0010,0010) has no known vr"));
    assertThat(read("{\"00280010\":{\"vr\":\"US\",\"Value\":[70000]}}"))
        .isEqualTo(refusal("(0028,0010) has a value that its representation can't hold"));
    assertThat(read("{\"00280010\":{\"vr\":\"US\",\"Value\":[1e999999999]}}"))
        .isInstanceOf(Outcome.Refused.class);
    assertThat(read("{\"00282000\":{\"vr\":\"OB\",\"InlineBinary\":\"%\"}}"))
        .isEqualTo(refusal("(0028,2000) has a value that its representation can't hold"));
    assertThat(read("{"))
        .isEqualTo(
            Outcome.refused(
                "not JSON, at line 1 column 2",
                "give one object of the DICOM JSON model (PS3.18 annex F)"));
    String deep = "{\"00081140\":{\"vr\":\"SQ\",\"Value\":[".repeat(40) + "]}}".repeat(40);
    assertThat(read(deep)).isEqualTo(refusal("sequences are nested more than 32 deep"));
  }

  private static Outcome<DataSet> read(String json) {
    return DicomJson.read(json, uri -> Optional.empty());
  }

  private static Outcome<DataSet> refusal(String reason) {
    return Outcome.refused(
        "not a data set in the DICOM JSON model: " + reason,
        "write it as PS3.18 annex F describes");
  }
}
