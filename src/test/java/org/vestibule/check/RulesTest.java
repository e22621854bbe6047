package org.vestibule.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Dictionary;
import org.vestibule.dicom.Tags;
import org.vestibule.dicom.Vr;

/** Rules that tie attributes together, and what doesn't belong in the object. */
class RulesTest {

  private static final DataSet DATA = SamplePhotograph.data();

  @Test
  void directionsAreTwoAxesOfTheBody() {
    for (String[] wrong :
        new String[][] {{"L", "R"}, {"L"}, {"L", "X"}, {"LR", "P"}, {"LL", "P"}, {"HALF", "P"}}) {
      assertThat(found(DATA.copy().put(Tags.PatientOrientation, wrong)))
          .anyMatch(w -> w.startsWith("error: PatientOrientation (0020,0020)"));
    }
    for (String[] right : new String[][] {{"L", "P"}, {"LA", "PR"}, {"RF", "A"}}) {
      assertThat(found(DATA.copy().put(Tags.PatientOrientation, right))).isEmpty();
    }
  }

  /** A wrong side means the wrong tooth treated: each contradiction is an error. */
  @Test
  void everythingThatNamesASideNamesTheSame() {
    DataSet left =
        SamplePhotograph.code("SCT", "123851003", "Mouth")
            .put(
                Tags.AnatomicRegionModifierSequence,
                SamplePhotograph.code("SCT", "7771000", "Left"));
    assertThat(found(DATA.copy().put(Tags.AnatomicRegionSequence, left)))
        .containsExactly(
            "error: ImageLaterality (0020,0062) contradicts the side that the anatomic region names"
                + " [PS3.3 C.7.6.1]");
    assertThat(found(DATA.copy().remove(Tags.ImageLaterality)))
        .containsExactly(
            "error: ImageLaterality (0020,0062) is missing although the region names a side"
                + " [PS3.3 C.7.6.1]");
    assertThat(found(DATA.copy().put(Tags.Laterality, "L")))
        .containsExactly(
            "error: Laterality (0020,0060) contradicts ImageLaterality [PS3.3 C.7.3.1]");
    DataSet leftQuadrant =
        SamplePhotograph.code("SCT", "39481002", "Maxillary dental arch")
            .put(
                Tags.PrimaryAnatomicStructureModifierSequence,
                SamplePhotograph.code("SCT", "7771000", "Left"));
    assertThat(found(DATA.copy().put(Tags.PrimaryAnatomicStructureSequence, leftQuadrant)))
        .containsExactly(
            "error: PrimaryAnatomicStructureSequence (0008,2228) names a structure of another side"
                + " than the laterality [PS3.3 C.7.6.1]");
    DataSet tooth26 = SamplePhotograph.code("SCT", "865988009", "tooth 26");
    DataSet superseded16 = SamplePhotograph.code("SCT", "5140004", "tooth 16, code before 2022");
    assertThat(found(DATA.copy().put(Tags.PrimaryAnatomicStructureSequence, superseded16)))
        .allMatch(w -> w.contains("holds a code that is not of CID"));
    assertThat(found(DATA.copy().put(Tags.PrimaryAnatomicStructureSequence, tooth26)))
        .containsExactly(
            "error: PrimaryAnatomicStructureSequence (0008,2228) names a tooth of the side opposite"
                + " to the laterality [PS3.3 C.7.6.1]");
  }

  @Test
  void nothingForeignGoesUnnoticed() {
    DataSet foreign = DATA.copy().put(Tags.ImagerPixelSpacing, "0.1", "0.1");
    assertThat(found(foreign)).isEmpty();
    int kvp = Dictionary.tag("KVP").orElseThrow();
    assertThat(found(DATA.copy().put(kvp, "70")))
        .containsExactly(
            "warning: KVP (0018,0060) doesn't belong to a VL Photographic Image here"
                + " [PS3.3 A.32.4]");
    assertThat(found(DATA.copy().put(0x00291001, Vr.LO, "x")))
        .containsExactly(
            "warning: (0029,1001) is a private element; only its maker knows what it"
                + " holds [PS3.5 7.8]");
    assertThat(found(DATA.copy().put(0x00080FFE, Vr.LO, "x")))
        .containsExactly("error: (0008,0FFE) is no element of the standard [PS3.6]");
    assertThat(found(DATA.copy().put(Tags.GPSLatitude, "48", "12", "0")))
        .containsExactly(
            "warning: GPSLatitude (0016,0072) tells where the photograph was taken; leave it out"
                + " [PS3.15 E.1]");
  }

  @Test
  void conditionsDemandAndForbid() {
    assertThat(found(DATA.copy().put(Tags.WindowCenter, "128")))
        .containsExactly(
            "error: WindowWidth (0028,1051) is missing; it must have a value (type 1C, since present"
                + " WindowCenter) [PS3.3 C.8.12.1]");
    assertThat(found(DATA.copy().put(Tags.WindowWidth, "128")))
        .containsExactly(
            "error: WindowWidth (0028,1051) must not be there: its condition (present WindowCenter)"
                + " doesn't hold [PS3.3 C.8.12.1]");
    assertThat(found(DATA.copy().put(Tags.ContainerComponentSequence, List.of())))
        .anyMatch(w -> w.startsWith("error: ContainerIdentifier (0040,0512) is missing"));
    DataSet number =
        new DataSet()
            .put(Tags.ValueType, "NUMERIC")
            .put(
                Tags.ConceptNameCodeSequence,
                SamplePhotograph.code("DCM", "130325", "Orthognathic Functional Condition"));
    assertThat(found(DATA.copy().put(Tags.AcquisitionContextSequence, number)))
        .containsExactly(
            "error: AcquisitionContextSequence[1]>NumericValue (0040,A30A) is missing; it must have"
                + " a value (type 1C, since ValueType = NUMERIC) [PS3.3 C.7.6.14]",
            "error: AcquisitionContextSequence[1]>MeasurementUnitsCodeSequence (0040,08EA) is"
                + " missing; it must have a value (type 1C, since ValueType = NUMERIC)"
                + " [PS3.3 C.7.6.14]");
  }

  @Test
  void aDerivedImageNamesItsSource() {
    DataSet source =
        new DataSet()
            .put(Tags.ReferencedSOPClassUID, "1.2.840.10008.5.1.4.1.1.77.1.4")
            .put(Tags.ReferencedSOPInstanceUID, "2.25.99");
    DataSet derived = DATA.copy().put(Tags.ImageType, "DERIVED", "PRIMARY");
    assertThat(found(derived)).hasSize(2).allMatch(w -> w.startsWith("warning: ImageType"));
    derived.put(Tags.DerivationDescription, "Cropped").put(Tags.SourceImageSequence, source);
    assertThat(found(derived))
        .containsExactly(
            "warning: SourceImageSequence (0008,2112) refers to an instance that no"
                + " ReferencedSeriesSequence lists [PS3.3 C.12.2]");
    derived.put(
        Tags.ReferencedSeriesSequence,
        new DataSet()
            .put(Tags.SeriesInstanceUID, "2.25.98")
            .put(Tags.ReferencedInstanceSequence, source));
    assertThat(found(derived)).isEmpty();
  }

  private static List<String> found(DataSet data) {
    return PhotographicChecker.check(data).stream().map(Finding::words).toList();
  }
}
