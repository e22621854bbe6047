package org.vestibule.check;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.vestibule.dental.Side;
import org.vestibule.dental.Tooth;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/** Whether everything that names a side names the same one (PS3.3 C.7.6.1.1.1, C.7.3.1). */
final class SideRules {

  private static final String ORIENTATION = "PS3.3 C.7.6.1.1.1";
  private static final String LATERALITY = "PS3.3 C.7.6.1";

  /** Each letter and the axis it lies on. */
  private static final Map<Character, Character> AXES =
      Map.of('L', 'x', 'R', 'x', 'A', 'y', 'P', 'y', 'H', 'z', 'F', 'z');

  /** SNOMED CT Right, Left, Bilateral of CID 244 (PS3.16) and what ImageLaterality calls them. */
  private static final Map<String, String> MODIFIERS =
      Map.of("24028007", "R", "7771000", "L", "51440002", "B");

  private static final String MOUTH = "123851003";
  private static final List<String> MOUTH_PARTS = List.of("MOUTH", "JAW", "MANDIBLE", "MAXILLA");

  private SideRules() {}

  static void check(DataSet data, Findings findings) {
    orientation(data.strings(Tags.PatientOrientation), findings);
    laterality(data, findings);
    teeth(data, findings);
    bodyPart(data, findings);
  }

  private static void orientation(List<String> values, Findings findings) {
    if (values.isEmpty()) {
      return;
    }
    boolean lettered = values.stream().allMatch(SideRules::isDirection);
    if (values.size() != 2 || !lettered) {
      findings.error(
          Tags.PatientOrientation,
          "must be two directions of up to three of the letters A P R L H F, no axis twice",
          ORIENTATION);
    } else if (axis(values.get(0)) == axis(values.get(1))) {
      findings.error(
          Tags.PatientOrientation,
          "has rows and columns run along the same axis of the body",
          ORIENTATION);
    }
  }

  private static char axis(String direction) {
    return AXES.getOrDefault(direction.charAt(0), '?');
  }

  private static boolean isDirection(String value) {
    List<Character> axes = value.chars().mapToObj(c -> AXES.getOrDefault((char) c, '?')).toList();
    return !axes.isEmpty()
        && !axes.contains('?')
        && axes.stream().distinct().count() == axes.size();
  }

  private static void laterality(DataSet data, Findings findings) {
    Optional<String> image = data.string(Tags.ImageLaterality);
    Optional<String> series = data.string(Tags.Laterality);
    if (image.isPresent() && series.isPresent() && !image.equals(series)) {
      findings.error(Tags.Laterality, "contradicts ImageLaterality", "PS3.3 C.7.3.1");
    }
    for (DataSet region : data.items(Tags.AnatomicRegionSequence)) {
      for (DataSet modifier : region.items(Tags.AnatomicRegionModifierSequence)) {
        modifier(modifier, image.or(() -> series), findings);
      }
    }
    structures(data, image.or(() -> series), findings);
  }

  private static void modifier(DataSet modifier, Optional<String> said, Findings findings) {
    Optional<String> side = modifier.string(Tags.CodeValue).map(MODIFIERS::get);
    if (side.isPresent() && said.isEmpty()) {
      findings.error(
          Tags.ImageLaterality, "is missing although the region names a side", LATERALITY);
    }
    if (side.isPresent() && said.isPresent() && !said.equals(side)) {
      findings.error(
          Tags.ImageLaterality, "contradicts the side that the anatomic region names", LATERALITY);
    }
  }

  /** A quadrant, named as an arch and a side; the mouth as a whole may show one of each side. */
  private static void structures(DataSet data, Optional<String> said, Findings findings) {
    boolean other =
        data.items(Tags.PrimaryAnatomicStructureSequence).stream()
            .flatMap(item -> item.items(Tags.PrimaryAnatomicStructureModifierSequence).stream())
            .flatMap(item -> item.string(Tags.CodeValue).map(MODIFIERS::get).stream())
            .anyMatch(side -> said.filter(s -> s.matches("[RL]") && !s.equals(side)).isPresent());
    if (other) {
      findings.error(
          Tags.PrimaryAnatomicStructureSequence,
          "names a structure of another side than the laterality",
          LATERALITY);
    }
  }

  private static void teeth(DataSet data, Findings findings) {
    Optional<Side> only = ClaimedView.side(data);
    if (only.isEmpty()) {
      return;
    }
    boolean other =
        CodeRead.codes(data, Tags.PrimaryAnatomicStructureSequence).stream()
            .flatMap(code -> Tooth.byCode(code).stream())
            .anyMatch(tooth -> tooth.side() != only.get());
    if (other) {
      findings.error(
          Tags.PrimaryAnatomicStructureSequence,
          "names a tooth of the side opposite to the laterality",
          LATERALITY);
    }
  }

  private static void bodyPart(DataSet data, Findings findings) {
    boolean mouth =
        data.items(Tags.AnatomicRegionSequence).stream()
            .anyMatch(item -> item.string(Tags.CodeValue).filter(MOUTH::equals).isPresent());
    Optional<String> part = data.string(Tags.BodyPartExamined);
    if (mouth && part.isPresent() && !MOUTH_PARTS.contains(part.get())) {
      findings.error(
          Tags.BodyPartExamined,
          "contradicts the anatomic region, which is the mouth",
          "PS3.3 C.7.3.1");
    }
  }
}
