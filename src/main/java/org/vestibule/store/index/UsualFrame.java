package org.vestibule.store.index;

import java.util.List;

/**
 * The teeth usually in frame, as ISO 3950 numbers, by how closely the view is about them: each
 * tooth stands in one list only, that of the smallest part of the mouth that the view shows.
 */
public record UsualFrame(
    List<Integer> segment, List<Integer> quadrant, List<Integer> arch, List<Integer> mouth) {

  /** Nothing is known to be in frame. */
  public static final UsualFrame NONE = new UsualFrame(List.of(), List.of(), List.of(), List.of());

  public UsualFrame {
    segment = List.copyOf(segment);
    quadrant = List.copyOf(quadrant);
    arch = List.copyOf(arch);
    mouth = List.copyOf(mouth);
  }
}
