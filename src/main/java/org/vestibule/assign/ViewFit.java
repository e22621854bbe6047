package org.vestibule.assign;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.vestibule.assign.WaitReason.Kind;
import org.vestibule.dental.Area;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.Tooth;
import org.vestibule.dental.View;

/** Whether named teeth can be seen in a view: a tooth of the other arch or side can't. */
final class ViewFit {

  private ViewFit() {}

  static Optional<WaitReason> problem(View view, Teeth teeth) {
    List<String> outside = new ArrayList<>();
    for (Tooth tooth : teeth.teeth()) {
      if (!fits(view, tooth)) {
        outside.add(tooth.wordsAndNumber());
      }
    }
    for (Area area : teeth.areas()) {
      if (area.teeth().stream().noneMatch(tooth -> fits(view, tooth))) {
        outside.add(area.words());
      }
    }
    return outside.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new WaitReason(
                Kind.CONTRADICTION,
                "the view " + view.name() + " does not show " + String.join(", ", outside),
                "look at the photograph and correct the view or the teeth"));
  }

  private static boolean fits(View view, Tooth tooth) {
    boolean arch = view.arch() == null || view.arch() == tooth.arch();
    boolean side = view.side() == null || view.side() == tooth.side();
    return arch && (side || view.teeth().contains(tooth));
  }
}
