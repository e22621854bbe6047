package org.vestibule.search;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.vestibule.dental.Area;
import org.vestibule.dental.Occupant;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.Tooth;
import org.vestibule.dental.ToothPosition;
import org.vestibule.store.index.AnyOf;
import org.vestibule.store.index.IndexField;
import org.vestibule.store.index.IndexTerm;

/**
 * The teeth of a question, any of which may be meant, and how closely a photograph can be about
 * them: named, or usually in the frame of a segment, a side, an arch or the mouth. A named area
 * counts like a frame of its size for the teeth in it.
 */
final class AskedTeeth {

  private final List<Teeth> said = new ArrayList<>();

  void add(Teeth teeth) {
    said.add(teeth);
  }

  boolean isEmpty() {
    return said.isEmpty();
  }

  Teeth last() {
    return said.get(said.size() - 1);
  }

  /** In words that can be asked again; none if no teeth were said. */
  List<String> words() {
    List<String> words = new ArrayList<>();
    for (Teeth teeth : said) {
      teeth.areas().forEach(area -> words.add("teeth of the " + area.words()));
      if (!teeth.positions().isEmpty()) {
        words.add(new Teeth(teeth.positions(), List.of()).words());
      }
    }
    return words.isEmpty() ? List.of() : List.of(String.join(", ", words));
  }

  List<String> tierWords() {
    return said.isEmpty()
        ? List.of()
        : plain().isEmpty()
            ? List.of("named")
            : List.of(
                "named",
                "usually in frame (segment)",
                "usually in frame (one side)",
                "usually in frame (arch)",
                "usually in frame (mouth)");
  }

  List<AnyOf> tiers() {
    if (said.isEmpty()) {
      return List.of();
    }
    List<Tooth> plain = plain();
    return plain.isEmpty()
        ? List.of(named())
        : List.of(
            named(),
            tier(IndexField.SEGMENT, plain),
            tier(IndexField.QUADRANT, plain),
            tier(IndexField.ARCH, plain),
            tier(IndexField.MOUTH, plain));
  }

  private Stream<Area> areas() {
    return said.stream().flatMap(teeth -> teeth.areas().stream()).distinct();
  }

  private Stream<ToothPosition> positions() {
    return said.stream().flatMap(teeth -> teeth.positions().stream()).distinct();
  }

  /** Teeth asked for as such, not as the place of an implant, a pontic or a gap. */
  private List<Tooth> plain() {
    return Stream.concat(
            positions().filter(at -> at.occupant() == Occupant.TOOTH).map(ToothPosition::tooth),
            areas().flatMap(area -> area.teeth().stream()))
        .distinct()
        .toList();
  }

  private AnyOf named() {
    Stream<IndexTerm> teeth = plain().stream().map(tooth -> term(IndexField.TOOTH, tooth));
    Stream<IndexTerm> others =
        positions()
            .filter(at -> at.occupant() != Occupant.TOOTH)
            .map(at -> at.tooth().iso() + " " + at.occupant().words())
            .map(at -> new IndexTerm(IndexField.POSITION, at));
    Stream<IndexTerm> areas = areas().map(area -> new IndexTerm(IndexField.AREA, area.iso()));
    return new AnyOf(Stream.of(teeth, others, areas).flatMap(terms -> terms).toList());
  }

  private static AnyOf tier(IndexField field, List<Tooth> teeth) {
    Stream<IndexTerm> frames = teeth.stream().map(tooth -> term(field, tooth));
    Stream<IndexTerm> areas =
        Stream.of(Area.values())
            .filter(area -> size(area) == field)
            .filter(area -> area.teeth().stream().anyMatch(teeth::contains))
            .map(area -> new IndexTerm(IndexField.AREA, area.iso()));
    return new AnyOf(Stream.concat(frames, areas).toList());
  }

  private static IndexField size(Area area) {
    return switch (area) {
      case MOUTH -> IndexField.MOUTH;
      case UPPER_ARCH, LOWER_ARCH -> IndexField.ARCH;
      case UPPER_RIGHT_QUADRANT, UPPER_LEFT_QUADRANT, LOWER_LEFT_QUADRANT, LOWER_RIGHT_QUADRANT ->
          IndexField.QUADRANT;
      default -> IndexField.SEGMENT;
    };
  }

  private static IndexTerm term(IndexField field, Tooth tooth) {
    return new IndexTerm(field, Integer.toString(tooth.iso()));
  }
}
