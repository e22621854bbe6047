package org.vestibule.check;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.vestibule.dental.Arch;
import org.vestibule.dental.CatalogueCode;
import org.vestibule.dental.Direction;
import org.vestibule.dental.PatientOrientation;
import org.vestibule.dental.Side;
import org.vestibule.dental.View;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/**
 * Whether the picture can be what a camera saw that looked as the view's codes say. The cross
 * product of the directions of row and column is the direction in which a camera looks that sees a
 * picture true-handed; in a mirror image it is the opposite one (PS3.3 C.7.6.1.1.1 and geometry).
 */
final class LayingRules {

  private static final String ORIENTATION = "PS3.3 C.7.6.1.1.1";
  private static final String VIEW = "PS3.3 C.8.12.1";

  /** PS3.16 CID 4064, edition 2026b: the first one alone, then those that name a flip. */
  private static final String UNCORRECTED = "789135000";

  private static final List<String> UNCORRECTED_AND_FLIPPED =
      List.of("789134001", "789132002", "789133007");

  private LayingRules() {}

  static void check(DataSet data, Findings findings) {
    modifiers(data, findings);
    ClaimedView claimed = ClaimedView.of(data).orElse(null);
    if (claimed == null) {
      return;
    }
    view(claimed, data, findings);
    side(claimed, data, findings);
    arch(claimed, data, findings);
    PatientOrientation.parse(String.join("\\", data.strings(Tags.PatientOrientation)))
        .ifPresent(shown -> orientation(claimed, shown, data, findings));
  }

  private static void modifiers(DataSet data, Findings findings) {
    boolean uncorrected = has(data, List.of(UNCORRECTED)) || has(data, UNCORRECTED_AND_FLIPPED);
    boolean corrected =
        CodeRead.viewAndModifiers(data).stream().anyMatch(CatalogueCode::saysCorrected);
    if (uncorrected && corrected) {
      findings.error(
          Tags.ViewCodeSequence, "says both a corrected and an uncorrected mirror image", VIEW);
    }
  }

  private static boolean has(DataSet data, List<String> codes) {
    return CodeRead.viewAndModifiers(data).stream().anyMatch(code -> codes.contains(code.value()));
  }

  private static void view(ClaimedView claimed, DataSet data, Findings findings) {
    View view = claimed.view();
    if (view == null || view.view() == null) {
      return;
    }
    String expected = view.view().value();
    if (CodeRead.codes(data, Tags.ViewCodeSequence).stream()
        .noneMatch(code -> code.value().equals(expected))) {
      findings.error(Tags.ViewCodeSequence, "is not the code of the view that it names", VIEW);
    }
  }

  private static void side(ClaimedView claimed, DataSet data, Findings findings) {
    View view = claimed.view();
    if (view != null) {
      Optional<String> said = data.string(Tags.ImageLaterality);
      String expected = letter(view.onlySide());
      if (said.isPresent() && !said.get().equals(expected)) {
        findings.error(
            Tags.ImageLaterality, "is not " + expected + ", as the view's name demands", VIEW);
      }
      return;
    }
    Optional<Side> said = ClaimedView.side(data);
    if (claimed.seen() != null && said.isPresent() && said.get() != claimed.seen()) {
      findings.error(Tags.ImageLaterality, "contradicts the side that the view names", VIEW);
    }
  }

  private static String letter(@Nullable Side side) {
    return side == null ? "U" : side == Side.RIGHT ? "R" : "L";
  }

  private static void arch(ClaimedView claimed, DataSet data, Findings findings) {
    List<Arch> named = ClaimedView.arches(data).distinct().toList();
    View view = claimed.view();
    boolean other =
        view != null && view.arch() != null && named.stream().anyMatch(arch -> arch != view.arch());
    if (other) {
      findings.error(
          Tags.PrimaryAnatomicStructureSequence,
          "names the arch, or a tooth of the arch, that the view doesn't show",
          VIEW);
    } else if (view == null && named.size() > 1 && claimed.looking().contains(Direction.HEAD)) {
      findings.error(
          Tags.PrimaryAnatomicStructureSequence,
          "names both arches, which no one view from above or below shows",
          VIEW);
    }
  }

  private static void orientation(
      ClaimedView claimed, PatientOrientation shown, DataSet data, Findings findings) {
    if (has(data, UNCORRECTED_AND_FLIPPED)) {
      return; // which flip is done and which is still to do, the meanings don't tell
    }
    boolean mirrored = has(data, List.of(UNCORRECTED));
    Direction looking = mirrored ? shown.looking().opposite() : shown.looking();
    if (!claimed.looking().contains(looking)) {
      findings.error(Tags.PatientOrientation, wrongHanded(claimed, shown, mirrored), ORIENTATION);
    } else if (!laidAsUsual(claimed, shown)) {
      findings.warning(
          Tags.PatientOrientation,
          "lays the picture otherwise than this view is shown; expected at the top: "
              + claimed.top().stream()
                  .map(direction -> String.valueOf(direction.letter()))
                  .sorted()
                  .collect(Collectors.joining(" or ")),
          ORIENTATION);
    }
  }

  private static boolean laidAsUsual(ClaimedView claimed, PatientOrientation shown) {
    return claimed.top().contains(ClaimedView.atTop(shown));
  }

  private static String wrongHanded(
      ClaimedView claimed, PatientOrientation shown, boolean mirrored) {
    if (mirrored) {
      return "is not that of this view's mirror image, which the view modifier says it is";
    }
    return claimed.looking().contains(shown.looking().opposite())
        ? "is that of this view's mirror image, and no view modifier says that the mirror image is"
            + " uncorrected"
        : "is not what a camera sees that looks as this view demands";
  }
}
