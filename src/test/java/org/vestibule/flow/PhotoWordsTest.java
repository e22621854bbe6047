package org.vestibule.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/** What {@code show} says that a picture shows. */
class PhotoWordsTest {

  private static final DataSet CORRECTED =
      code("SCT", "787610003", "Mirrored photo image intraoral corrected");

  @Test
  void theCataloguesNameComesFirstThenItsCodesAndTheMirror() {
    DataSet view =
        code("SCT", "260499007", "Occlusal projection")
            .put(
                Tags.ViewModifierCodeSequence,
                CORRECTED,
                code("99VESTIBULE", "upper-right-occlusal", "Upper right quadrant, occlusal"));
    assertThat(shown(new DataSet().put(Tags.ViewCodeSequence, view)))
        .containsExactly(
            "View: Upper right quadrant, occlusal",
            ": Occlusal projection; Mirrored photo image intraoral corrected",
            "Mirror: was a mirror image, shown corrected");
  }

  @Test
  void aViewWithoutAStandardCodeIsNamedToo() {
    DataSet view =
        new DataSet()
            .put(Tags.LongCodeValue, "lesion-palate-close-up")
            .put(Tags.CodingSchemeDesignator, "99VESTIBULE")
            .put(Tags.CodeMeaning, "Lesion, palate, close-up")
            .put(Tags.ViewModifierCodeSequence, CORRECTED);
    assertThat(shown(new DataSet().put(Tags.ViewCodeSequence, view)))
        .startsWith("View: Lesion, palate, close-up");
  }

  /** Objects of the first recipe and of other makers have the standard's code alone. */
  @Test
  void withoutACodeOfOursTheStandardsIsTheView() {
    DataSet view = code("SCT", "399033003", "frontal");
    assertThat(shown(new DataSet().put(Tags.ViewCodeSequence, view)))
        .containsExactly("View: frontal");
  }

  @Test
  void areasAreReadBackFromArchSideAndDepth() {
    DataSet maxilla = code("SCT", "39481002", "Maxillary dental arch");
    DataSet right = code("SCT", "24028007", "Right");
    DataSet back = code("SCT", "255551008", "Posterior");
    DataSet object =
        new DataSet()
            .put(
                Tags.PrimaryAnatomicStructureSequence,
                maxilla,
                maxilla.copy().put(Tags.PrimaryAnatomicStructureModifierSequence, right),
                maxilla.copy().put(Tags.PrimaryAnatomicStructureModifierSequence, back, right),
                maxilla.copy().put(Tags.PrimaryAnatomicStructureModifierSequence, back),
                code("SCT", "865995000", "tooth"),
                code("SCT", "89545001", "Face"));
    assertThat(shown(object))
        .containsExactly(
            "Teeth and areas: upper arch, upper right quadrant, upper right sextant, Maxillary"
                + " dental arch, Posterior, upper right first molar (16), Face");
  }

  private static DataSet code(String scheme, String value, String meaning) {
    return new DataSet()
        .put(Tags.CodeValue, value)
        .put(Tags.CodingSchemeDesignator, scheme)
        .put(Tags.CodeMeaning, meaning);
  }

  private static List<String> shown(DataSet object) {
    return PhotoWords.of(object).stream()
        .map(line -> line.label() + ": " + line.value())
        .filter(line -> !line.startsWith("Picture: "))
        .toList();
  }
}
