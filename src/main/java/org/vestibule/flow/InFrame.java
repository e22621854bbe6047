package org.vestibule.flow;

import java.util.List;
import java.util.stream.Stream;
import org.vestibule.dental.Tooth;
import org.vestibule.dental.UsualTeeth;
import org.vestibule.dental.View;
import org.vestibule.store.index.UsualFrame;

/**
 * How closely a view is about the teeth that are usually in its frame: a segment of an arch, one
 * side, an arch, or the whole mouth. A hint for ranking, never a record.
 */
final class InFrame {

  /** A quadrant shown to its second molar has seven, a front segment six. */
  private static final int SEGMENT_TEETH = 6;

  private InFrame() {}

  static UsualFrame of(View view) {
    UsualTeeth usual = view.teeth();
    List<Tooth> all =
        Stream.of(usual.permanent(), usual.mixed(), usual.deciduous())
            .flatMap(List::stream)
            .distinct()
            .toList();
    List<Integer> numbers = all.stream().map(Tooth::iso).sorted().toList();
    boolean oneArch = all.stream().map(Tooth::arch).distinct().count() <= 1;
    boolean oneSide = all.stream().map(Tooth::side).distinct().count() <= 1;
    if (oneArch && usual.permanent().size() <= SEGMENT_TEETH) {
      return new UsualFrame(numbers, List.of(), List.of(), List.of());
    }
    if (oneSide) {
      return new UsualFrame(List.of(), numbers, List.of(), List.of());
    }
    if (oneArch) {
      return new UsualFrame(List.of(), List.of(), numbers, List.of());
    }
    return new UsualFrame(List.of(), List.of(), List.of(), numbers);
  }
}
