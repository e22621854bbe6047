package org.vestibule.search;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.vestibule.store.index.UsualFrame;

/**
 * A few views with the teeth usually in an adult's frame (common practice, no source), written out
 * here by hand so that tests do not learn them from the program.
 */
enum ShownView {
  UPPER_OCCLUSAL("upper-occlusal", "Upper occlusal", Part.ARCH, upper(7)),
  LOWER_OCCLUSAL("lower-occlusal", "Lower occlusal", Part.ARCH, lower(7)),
  UPPER_RIGHT_QUADRANT(
      "upper-right-occlusal",
      "Upper right quadrant, occlusal",
      Part.QUADRANT,
      List.of(11, 12, 13, 14, 15, 16, 17)),
  RIGHT_BUCCAL(
      "right-buccal",
      "Right buccal",
      Part.QUADRANT,
      List.of(13, 14, 15, 16, 17, 43, 44, 45, 46, 47)),
  LEFT_BUCCAL(
      "left-buccal", "Left buccal", Part.QUADRANT, List.of(23, 24, 25, 26, 27, 33, 34, 35, 36, 37)),
  PALATAL_RIGHT("palatal-right", "Palatal, right side", Part.SEGMENT, List.of(14, 15, 16, 17)),
  UPPER_ANTERIOR("upper-anterior", "Upper front teeth with contraster", Part.SEGMENT, upper(3)),
  FRONTAL(
      "frontal",
      "Frontal, teeth together",
      Part.MOUTH,
      Stream.concat(upper(5).stream(), lower(5).stream()).toList()),
  SMILE("smile", "Smile, front", Part.ARCH, upper(5)),
  LIPS("lips", "Lips and soft tissue", Part.NOTHING, List.of());

  private enum Part {
    SEGMENT,
    QUADRANT,
    ARCH,
    MOUTH,
    NOTHING
  }

  private final String key;
  private final String viewName;
  private final Part part;
  private final String teeth;

  ShownView(String key, String viewName, Part part, List<Integer> teeth) {
    this.key = key;
    this.viewName = viewName;
    this.part = part;
    this.teeth = teeth.stream().map(String::valueOf).collect(Collectors.joining(" "));
  }

  String key() {
    return key;
  }

  String viewName() {
    return viewName;
  }

  UsualFrame usual() {
    return new UsualFrame(in(Part.SEGMENT), in(Part.QUADRANT), in(Part.ARCH), in(Part.MOUTH));
  }

  private List<Integer> in(Part size) {
    return part != size
        ? List.of()
        : Stream.of(teeth.split(" ", -1)).map(Integer::valueOf).toList();
  }

  private static List<Integer> upper(int toothFromMidline) {
    return quadrants(10, 20, toothFromMidline);
  }

  private static List<Integer> lower(int toothFromMidline) {
    return quadrants(40, 30, toothFromMidline);
  }

  private static List<Integer> quadrants(int right, int left, int last) {
    return Stream.of(right, left)
        .flatMap(quadrant -> Stream.iterate(1, t -> t <= last, t -> t + 1).map(t -> quadrant + t))
        .toList();
  }
}
