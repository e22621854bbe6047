package org.vestibule.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.dental.Arch;
import org.vestibule.dental.CatalogueCode;
import org.vestibule.dental.Code;
import org.vestibule.dental.PatientOrientation;
import org.vestibule.dental.Side;
import org.vestibule.dental.VectorOracle;
import org.vestibule.dental.View;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/**
 * Every Patient Orientation that a view can't have is found. Which ones those are is worked out by
 * the vector oracle (cross product of row and column), not by the checker's own algebra.
 */
class LayingTest {

  private static final Code UNCORRECTED =
      new Code("SCT", "789135000", "Mirrored image uncorrected");
  private static final Code CORRECTED =
      new Code("SCT", "787610003", "Mirrored photo image intraoral corrected");

  private static final DataSet SAMPLE = SamplePhotograph.data();

  /** All 24 ordered pairs of directions along two axes of the body. */
  private static final List<String[]> PAIRS = pairs();

  private static List<String[]> pairs() {
    List<String[]> pairs = new ArrayList<>();
    for (char right : "LRAPHF".toCharArray()) {
      for (char down : "LRAPHF".toCharArray()) {
        if (down != right && down != VectorOracle.opposite(right)) {
          pairs.add(new String[] {String.valueOf(right), String.valueOf(down)});
        }
      }
    }
    return pairs;
  }

  @Test
  void ofEveryViewOfTheCatalogueExactlyTheWrongHandedPicturesAreErrors() {
    assertThat(PAIRS).hasSize(24);
    for (View view : ViewCatalogue.standard().all()) {
      List<String> layouts = view.layouts().stream().map(PatientOrientation::text).toList();
      int right = 0;
      for (String[] pair : PAIRS) {
        boolean handed = looking(pair) == view.looking().letter();
        boolean laid = layouts.contains(pair[0] + "\\" + pair[1]);
        List<Finding> found = found(data(view, true).put(Tags.PatientOrientation, pair));
        String as = view.key() + " " + pair[0] + "\\" + pair[1] + " " + found;
        assertThat(errors(found)).as(as).isEqualTo(handed ? 0 : 1);
        assertThat(found.isEmpty()).as(as).isEqualTo(laid);
        assertThat(found).as(as).allMatch(f -> f.tag() == Tags.PatientOrientation);
        right += handed ? 1 : 0;
      }
      assertThat(right).as("turns of a true-handed picture").isEqualTo(4);
    }
  }

  /** Objects of other makers: no code of ours, but the standard's view, side and arch. */
  @Test
  void theStandardsCodesAloneAreEnoughToFindAWrongSide() {
    int views = 0;
    for (View view : ViewCatalogue.standard().all()) {
      if (view.view() == null || view.view().meaning().matches(".*(oblique|45 degree).*")) {
        continue;
      }
      views++;
      for (String[] pair : PAIRS) {
        boolean handed = looking(pair) == view.looking().letter();
        List<Finding> found = found(data(view, false).put(Tags.PatientOrientation, pair));
        assertThat(errors(found)).as(view.key() + found).isEqualTo(handed ? 0 : 1);
        if (!view.occlusal()) {
          assertThat(found.isEmpty()).isEqualTo(handed && pair[1].equals("F"));
        }
      }
    }
    assertThat(views).isGreaterThan(25);
  }

  /** Seen from a side, the front teeth may be given as seen from the front or from that side. */
  @ParameterizedTest
  @CsvSource({
    "oblique-anterior-right, PL",
    "oblique-anterior-left, PR",
    "smile-right, PL",
    "face-three-quarter-right, PL",
    "face-three-quarter-left, PR"
  })
  void anObliqueViewOfOthersLooksBackOrAcross(String key, String looking) {
    View view = ViewCatalogue.standard().byKey(key).orElseThrow();
    for (String[] pair : PAIRS) {
      DataSet spoilt = data(view, false).put(Tags.PatientOrientation, pair);
      boolean possible = looking.indexOf(looking(pair)) >= 0;
      assertThat(errors(found(spoilt)))
          .as(key + " " + pair[0] + pair[1])
          .isEqualTo(possible ? 0 : 1);
    }
  }

  /** PS3.16 CID 4064: a mirror image that says so must be one, and only then may be. */
  @Test
  void anUncorrectedMirrorImageMustSaySoAndBeOne() {
    for (View view : ViewCatalogue.standard().all()) {
      for (String[] pair : PAIRS) {
        boolean mirrored = looking(pair) == VectorOracle.opposite(view.looking().letter());
        DataSet said = data(view, true, UNCORRECTED).put(Tags.PatientOrientation, pair);
        assertThat(errors(found(said))).as(view.key()).isEqualTo(mirrored ? 0 : 1);
      }
    }
    View buccal = ViewCatalogue.standard().byKey("right-buccal").orElseThrow();
    assertThat(
            words(
                data(buccal, true, UNCORRECTED, CORRECTED).put(Tags.PatientOrientation, "P", "F")))
        .containsExactly(
            "error: ViewCodeSequence (0054,0220) says both a corrected and an uncorrected mirror"
                + " image [PS3.3 C.8.12.1]");
    assertThat(words(data(buccal, true).put(Tags.PatientOrientation, "P", "F")))
        .containsExactly(
            "error: PatientOrientation (0020,0020) is that of this view's mirror image, and no view"
                + " modifier says that the mirror image is uncorrected [PS3.3 C.7.6.1.1.1]");
    assertThat(words(data(buccal, true).put(Tags.PatientOrientation, "L", "P")))
        .containsExactly(
            "error: PatientOrientation (0020,0020) is not what a camera sees that looks as this view"
                + " demands [PS3.3 C.7.6.1.1.1]");
    assertThat(words(data(buccal, true).put(Tags.PatientOrientation, "P", "H")))
        .containsExactly(
            "warning: PatientOrientation (0020,0020) lays the picture otherwise than this view is"
                + " shown; expected at the top: H [PS3.3 C.7.6.1.1.1]");
  }

  @Test
  void sideArchAndViewDoNotContradictEachOther() {
    View right = ViewCatalogue.standard().byKey("right-buccal").orElseThrow();
    DataSet leftSide = data(right, false).put(Tags.ImageLaterality, "L");
    leftSide.remove(Tags.AnatomicRegionSequence);
    assertThat(words(leftSide))
        .containsExactly(
            "error: ImageLaterality (0020,0062) contradicts the side that the view names [PS3.3"
                + " C.8.12.1]");
    DataSet unpaired = data(right, true).put(Tags.ImageLaterality, "U");
    unpaired.remove(Tags.AnatomicRegionSequence);
    assertThat(words(unpaired))
        .containsExactly(
            "error: ImageLaterality (0020,0062) is not R, as the view's name demands [PS3.3"
                + " C.8.12.1]");
    View upper = ViewCatalogue.standard().byKey("upper-occlusal").orElseThrow();
    DataSet tooth46 = SamplePhotograph.code("SCT", "866005003", "tooth 46");
    assertThat(words(data(upper, true).put(Tags.PrimaryAnatomicStructureSequence, tooth46)))
        .containsExactly(
            "error: PrimaryAnatomicStructureSequence (0008,2228) names the arch, or a tooth of the"
                + " arch, that the view doesn't show [PS3.3 C.8.12.1]");
    DataSet arch = SamplePhotograph.code("SCT", "39481002", "Maxillary dental arch");
    assertThat(words(data(upper, false).put(Tags.PrimaryAnatomicStructureSequence, arch, tooth46)))
        .containsExactly(
            "error: PrimaryAnatomicStructureSequence (0008,2228) names both arches, which no one view"
                + " from above or below shows [PS3.3 C.8.12.1]");
    DataSet other = data(right, true);
    DataSet item = other.item(Tags.ViewCodeSequence).orElseThrow().put(Tags.CodeValue, "399173006");
    assertThat(words(other.put(Tags.ViewCodeSequence, item)))
        .containsExactly(
            "error: ViewCodeSequence (0054,0220) is not the code of the view that it names [PS3.3"
                + " C.8.12.1]");
  }

  private static char looking(String[] pair) {
    return VectorOracle.cross(pair[0].charAt(0), pair[1].charAt(0));
  }

  /** A photograph of the view, rightly laid; with the catalogue's own code or the standard's. */
  private static DataSet data(View view, boolean own, Code... modifiers) {
    DataSet data = SAMPLE.copy();
    data.put(Tags.PatientOrientation, view.shownAs().right(), view.shownAs().down());
    data.put(Tags.ImageLaterality, view.onlySide() == null ? "U" : letter(view.onlySide()));
    data.put(Tags.AnatomicRegionSequence, item(view.region()));
    data.remove(Tags.PrimaryAnatomicStructureSequence);
    data.remove(Tags.BodyPartExamined);
    if (view.arch() != null) {
      String arch = view.arch() == Arch.UPPER ? "39481002" : "88176008";
      data.put(
          Tags.PrimaryAnatomicStructureSequence, SamplePhotograph.code("SCT", arch, "an arch"));
    }
    List<DataSet> inside =
        new ArrayList<>(List.of(modifiers).stream().map(LayingTest::item).toList());
    Code code = view.view();
    DataSet sequence = code == null ? ownItem(view) : item(code);
    if (code != null && own) {
      inside.add(ownItem(view));
    }
    if (!inside.isEmpty()) {
      sequence.put(Tags.ViewModifierCodeSequence, inside);
    }
    return data.put(Tags.ViewCodeSequence, sequence);
  }

  private static String letter(@Nullable Side side) {
    return side == Side.RIGHT ? "R" : "L";
  }

  private static DataSet item(Code code) {
    return SamplePhotograph.code(code.scheme(), code.value(), code.meaning());
  }

  private static DataSet ownItem(View view) {
    DataSet item = new DataSet();
    item.put(view.key().length() > 16 ? Tags.LongCodeValue : Tags.CodeValue, view.key());
    return item.put(Tags.CodingSchemeDesignator, CatalogueCode.SCHEME)
        .put(Tags.CodeMeaning, view.name())
        .put(Tags.MappingResource, "DCMR")
        .put(Tags.ContextIdentifier, "4063")
        .put(Tags.ContextGroupVersion, "20250330")
        .put(Tags.ContextGroupExtensionFlag, "Y")
        .put(Tags.ContextGroupLocalVersion, "20261125")
        .put(Tags.ContextGroupExtensionCreatorUID, "2.25.7");
  }

  private static long errors(List<Finding> found) {
    return found.stream().filter(f -> f.severity() == Severity.ERROR).count();
  }

  private static List<Finding> found(DataSet data) {
    return PhotographicChecker.check(data);
  }

  private static List<String> words(DataSet data) {
    return found(data).stream().map(Finding::words).toList();
  }
}
