package org.vestibule.check;

import java.util.EnumSet;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.vestibule.dental.Arch;
import org.vestibule.dental.CatalogueCode;
import org.vestibule.dental.Code;
import org.vestibule.dental.Direction;
import org.vestibule.dental.Edge;
import org.vestibule.dental.PatientOrientation;
import org.vestibule.dental.Side;
import org.vestibule.dental.Tooth;
import org.vestibule.dental.View;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/**
 * What an object's codes say of how the camera looked: from the catalogue's view where one is
 * named, otherwise from the standard's view code, the arch and the side.
 *
 * @param looking every way in which the camera can have looked
 * @param seen the side that the view's name says; null if it says none
 * @param top what may lie at the top of the picture
 * @param view the catalogue's view; null if none is named
 */
record ClaimedView(
    Set<Direction> looking, @Nullable Side seen, Set<Direction> top, @Nullable View view) {

  private static final Map<String, String[]> BY_CODE =
      Tables.read("view-looking.csv").stream()
          .flatMap(line -> Stream.of(Map.entry(line[0], line), Map.entry(line[1], line)))
          .collect(Collectors.toUnmodifiableMap(Map.Entry::getKey, Map.Entry::getValue));

  private static final Map<String, Arch> ARCHES =
      Map.of("39481002", Arch.UPPER, "88176008", Arch.LOWER);
  private static final Map<String, Side> SIDES = Map.of("R", Side.RIGHT, "L", Side.LEFT);
  private static final Set<Direction> VERTICAL = Set.of(Direction.HEAD, Direction.FEET);
  private static final Map<Side, Direction> AWAY =
      Map.of(Side.RIGHT, Direction.RIGHT, Side.LEFT, Direction.LEFT);

  ClaimedView {
    looking = Set.copyOf(looking);
    top = Set.copyOf(top);
  }

  /** The view that the object's codes name, if this room knows it. */
  static Optional<ClaimedView> of(DataSet data) {
    Optional<View> named =
        CodeRead.viewAndModifiers(data).stream()
            .flatMap(code -> CatalogueCode.view(code).stream())
            .findFirst();
    return named
        .map(ClaimedView::ofCatalogue)
        .or(
            () ->
                CodeRead.codes(data, Tags.ViewCodeSequence).stream()
                    .map(Code::value)
                    .flatMap(value -> Optional.ofNullable(BY_CODE.get(value)).stream())
                    .findFirst()
                    .map(line -> ofLine(line, data)));
  }

  private static ClaimedView ofCatalogue(View view) {
    return new ClaimedView(
        Set.of(view.looking()),
        view.side(),
        view.layouts().stream().map(ClaimedView::atTop).collect(Collectors.toSet()),
        view);
  }

  private static ClaimedView ofLine(String[] line, DataSet data) {
    Side seen = line[3].isEmpty() ? null : SIDES.get(line[3]);
    Set<Direction> looking = EnumSet.copyOf(directions(line[2]));
    Side side = seen != null ? seen : side(data).orElse(null);
    if (side != null && looking.containsAll(AWAY.values())) {
      looking.remove(AWAY.get(side));
    }
    Set<Arch> arches = EnumSet.noneOf(Arch.class);
    arches(data).forEach(arches::add);
    if (arches.size() == 1 && looking.containsAll(VERTICAL)) {
      looking.remove(arches.contains(Arch.UPPER) ? Direction.FEET : Direction.HEAD);
    }
    return new ClaimedView(looking, seen, directions(line[4]), null);
  }

  /** What lies at the top of a picture of this orientation. */
  static Direction atTop(PatientOrientation shown) {
    return Stream.of(Direction.values())
        .filter(direction -> shown.edgeOf(direction).filter(Edge.TOP::equals).isPresent())
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("a picture has no top"));
  }

  /** The side that Image Laterality, or else Laterality, names. */
  static Optional<Side> side(DataSet data) {
    return data.string(Tags.ImageLaterality).or(() -> data.string(Tags.Laterality)).map(SIDES::get);
  }

  /** The arches that the structures are, or stand in. */
  static Stream<Arch> arches(DataSet data) {
    Function<Code, @Nullable Arch> arch =
        code -> Tooth.byCode(code).map(Tooth::arch).orElseGet(() -> ARCHES.get(code.value()));
    return CodeRead.codes(data, Tags.PrimaryAnatomicStructureSequence).stream()
        .map(arch)
        .filter(Objects::nonNull);
  }

  private static Set<Direction> directions(String letters) {
    return letters
        .chars()
        .mapToObj(letter -> Direction.of((char) letter).orElseThrow())
        .collect(Collectors.toSet());
  }
}
