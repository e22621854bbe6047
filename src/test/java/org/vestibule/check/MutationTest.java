package org.vestibule.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Element;
import org.vestibule.dicom.Tags;
import org.vestibule.dicom.Vr;

/**
 * A valid object with each mandatory attribute removed and spoilt in turn: the checker must name
 * the very attribute. What must be there is taken from the module tables of PS3.3 2025e, written
 * out here by hand and not from the checker's own table.
 */
class MutationTest {

  /** Types 1 and 1C whose condition a colour photograph meets. */
  private static final List<Integer> NEEDS_VALUE =
      List.of(
          Tags.SOPClassUID,
          Tags.SOPInstanceUID,
          Tags.StudyInstanceUID,
          Tags.SeriesInstanceUID,
          Tags.Modality,
          Tags.ImageType,
          Tags.SamplesPerPixel,
          Tags.PhotometricInterpretation,
          Tags.PlanarConfiguration,
          Tags.Rows,
          Tags.Columns,
          Tags.BitsAllocated,
          Tags.BitsStored,
          Tags.HighBit,
          Tags.PixelRepresentation,
          Tags.SpecificCharacterSet,
          Tags.ICCProfile,
          Tags.PixelData);

  /** Types 2 and 2C whose condition a photograph meets. */
  private static final List<Integer> MAY_BE_EMPTY =
      List.of(
          Tags.PatientName,
          Tags.PatientID,
          Tags.PatientBirthDate,
          Tags.PatientSex,
          Tags.StudyDate,
          Tags.StudyTime,
          Tags.ReferringPhysicianName,
          Tags.StudyID,
          Tags.AccessionNumber,
          Tags.SeriesNumber,
          Tags.Manufacturer,
          Tags.InstanceNumber,
          Tags.PatientOrientation,
          Tags.AcquisitionContextSequence,
          Tags.LossyImageCompression);

  /** The file header repeats the first two; without the third the name can't be encoded. */
  private static final List<Integer> UNWRITABLE_WITHOUT =
      List.of(Tags.SOPClassUID, Tags.SOPInstanceUID, Tags.SpecificCharacterSet);

  /** A wrong value for each attribute whose values are listed or tied to others. */
  private static final Map<Integer, List<String>> WRONG = wrong();

  @TempDir Path folder;

  private static Map<Integer, List<String>> wrong() {
    Map<Integer, List<String>> wrong = new LinkedHashMap<>();
    wrong.put(Tags.SOPClassUID, List.of("1.2.840.10008.5.1.4.1.1.7"));
    wrong.put(Tags.Modality, List.of("DX"));
    wrong.put(Tags.ImageType, List.of("COPIED", "PRIMARY"));
    wrong.put(Tags.SamplesPerPixel, List.of("2"));
    wrong.put(Tags.PhotometricInterpretation, List.of("YBR_FULL"));
    wrong.put(Tags.PlanarConfiguration, List.of("1"));
    wrong.put(Tags.Rows, List.of("47"));
    wrong.put(Tags.Columns, List.of("65"));
    wrong.put(Tags.BitsAllocated, List.of("16"));
    wrong.put(Tags.BitsStored, List.of("7"));
    wrong.put(Tags.HighBit, List.of("8"));
    wrong.put(Tags.PixelRepresentation, List.of("1"));
    wrong.put(Tags.SpecificCharacterSet, List.of("ISO_IR 999"));
    wrong.put(Tags.PatientSex, List.of("X"));
    wrong.put(Tags.PatientOrientation, List.of("L", "R"));
    wrong.put(Tags.LossyImageCompression, List.of("00"));
    wrong.put(Tags.ImageLaterality, List.of("L"));
    wrong.put(Tags.BodyPartExamined, List.of("FACE"));
    wrong.put(Tags.BurnedInAnnotation, List.of("MAYBE"));
    wrong.put(Tags.RecognizableVisualFeatures, List.of("MAYBE"));
    wrong.put(Tags.TimezoneOffsetFromUTC, List.of("+2500"));
    wrong.put(Tags.ColorSpace, List.of("BEIGE"));
    return wrong;
  }

  /** One way to write each representation wrongly. */
  private static final Map<Vr, String> MISWRITTEN =
      Map.ofEntries(
          Map.entry(Vr.CS, "lower case"),
          Map.entry(Vr.DA, "20260230"),
          Map.entry(Vr.TM, "256000"),
          Map.entry(Vr.DT, "20261305"),
          Map.entry(Vr.UI, "1.02.3"),
          Map.entry(Vr.IS, "1.5"),
          Map.entry(Vr.DS, "1,5"),
          Map.entry(Vr.SH, "seventeen letters"),
          Map.entry(Vr.LO, "x".repeat(65)),
          Map.entry(Vr.PN, "a^b^c^d^e^f"));

  @Test
  void everyRemovalIsFound() {
    List<Integer> all = new ArrayList<>(NEEDS_VALUE);
    all.addAll(MAY_BE_EMPTY);
    for (int tag : all) {
      DataSet spoilt = SamplePhotograph.data().remove(tag);
      assertFound(PhotographicChecker.check(spoilt), tag, "is missing");
    }
  }

  @Test
  void everyEmptyingIsFoundWhereAValueIsNeeded() {
    for (int tag : NEEDS_VALUE) {
      DataSet spoilt = SamplePhotograph.data().putEmpty(tag);
      assertFound(PhotographicChecker.check(spoilt), tag, "is empty");
    }
    for (int tag : MAY_BE_EMPTY) {
      if (tag != Tags.LossyImageCompression) {
        assertThat(PhotographicChecker.check(SamplePhotograph.data().putEmpty(tag)))
            .as(Tags.text(tag))
            .isEmpty();
      }
    }
  }

  @Test
  void everyWrongValueIsFound() {
    for (Map.Entry<Integer, List<String>> wrong : WRONG.entrySet()) {
      DataSet spoilt =
          SamplePhotograph.data().put(wrong.getKey(), wrong.getValue().toArray(String[]::new));
      List<Finding> found =
          wrong.getKey() == Tags.SpecificCharacterSet
              ? PhotographicChecker.check(spoilt)
              : PhotographicChecker.check(SamplePhotograph.file(spoilt));
      assertFound(found, wrong.getKey(), "");
    }
  }

  @Test
  void everyMiswrittenValueAndMultiplicityIsFound() {
    int spoilings = 0;
    for (Element element : SamplePhotograph.data()) {
      String miswritten = MISWRITTEN.get(element.vr());
      if (miswritten != null) {
        DataSet spoilt = SamplePhotograph.data().put(element.tag(), miswritten);
        assertFound(PhotographicChecker.check(spoilt), element.tag(), "");
        spoilings++;
      }
      if (element.multiplicity() == 1 && element.vr().isText() && !isList(element.tag())) {
        String value = element.strings().get(0);
        DataSet doubled = SamplePhotograph.data().put(element.tag(), value, value);
        assertFound(PhotographicChecker.check(doubled), element.tag(), "has 2 values, not 1");
        spoilings++;
      }
    }
    assertThat(spoilings).isGreaterThan(50);
  }

  private static boolean isList(int tag) {
    return tag == Tags.SpecificCharacterSet
        || tag == Tags.LossyImageCompressionMethod
        || tag == Tags.LossyImageCompressionRatio
        || tag == Tags.PhotographicSensitivity
        || tag == Tags.LensMake;
  }

  @Test
  void everyWrongRepresentationIsFound() {
    for (Element element : SamplePhotograph.data()) {
      Vr wrong = element.vr() == Vr.UN ? Vr.OB : Vr.UN;
      if (element.vr() != Vr.SQ && !element.isEncapsulated()) {
        DataSet spoilt = SamplePhotograph.data().put(element.tag(), wrong, new byte[] {'A', 'B'});
        assertFound(
            PhotographicChecker.check(spoilt), element.tag(), "has the value representation UN");
      }
    }
  }

  @Test
  void everyCodeItemIsHeldToTheCodeMacro() {
    List<Integer> sequences =
        List.of(
            Tags.ViewCodeSequence,
            Tags.AnatomicRegionSequence,
            Tags.PrimaryAnatomicStructureSequence,
            Tags.DeviceSequence);
    for (int sequence : sequences) {
      for (int tag : List.of(Tags.CodeValue, Tags.CodingSchemeDesignator, Tags.CodeMeaning)) {
        DataSet item = SamplePhotograph.data().item(sequence).orElseThrow();
        DataSet without = SamplePhotograph.data().put(sequence, item.copy().remove(tag));
        assertFound(PhotographicChecker.check(without), tag, "is missing");
        DataSet empty = SamplePhotograph.data().put(sequence, item.copy().putEmpty(tag));
        assertFound(PhotographicChecker.check(empty), tag, "is empty");
      }
      DataSet other = SamplePhotograph.code("SCT", "1", "Something else");
      DataSet spoilt = SamplePhotograph.data().put(sequence, other);
      assertFound(PhotographicChecker.check(spoilt), sequence, "holds a code that is not of CID");
    }
    DataSet twice =
        SamplePhotograph.data()
            .put(
                Tags.ViewCodeSequence,
                SamplePhotograph.code("SCT", "260499007", "Occlusal projection"),
                SamplePhotograph.code("SCT", "399033003", "frontal"));
    assertFound(PhotographicChecker.check(twice), Tags.ViewCodeSequence, "has 2 items");
  }

  /** Where the validator sees a removal as an error, so do we; it must see most of them. */
  @Test
  void anIndependentValidatorAgreesOnRemovals() throws Exception {
    ExternalTool dciodvfy = ExternalTool.require("dciodvfy", "dicom3tools");
    int agreed = 0;
    List<Integer> all = new ArrayList<>(NEEDS_VALUE);
    all.addAll(MAY_BE_EMPTY);
    for (int tag : all) {
      if (UNWRITABLE_WITHOUT.contains(tag)) {
        continue;
      }
      byte[] file = SamplePhotograph.file(SamplePhotograph.data().remove(tag));
      Path path = Files.write(folder.resolve("spoilt.dcm"), file);
      ExternalTool.Result result = dciodvfy.run(path.toString());
      boolean theirs = (result.errors() + result.text()).contains("Error");
      boolean ours = !CheckReport.of("", file).passes();
      assertThat(ours || !theirs).as(Tags.text(tag)).isTrue();
      agreed += theirs && ours ? 1 : 0;
    }
    assertThat(agreed).isGreaterThan(22);
  }

  private static void assertFound(List<Finding> findings, int tag, String sentence) {
    assertThat(findings)
        .as("%s: %s", Tags.text(tag), findings)
        .anyMatch(f -> f.tag() == tag && f.sentence().startsWith(sentence));
    assertThat(findings.toString()).doesNotContain("Müster").doesNotContain("P-0001");
  }
}
