package org.vestibule.dental;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The tooth positions and areas that a person named. Kept in one order (upper arch from the
 * patient's right to left, then the lower arch) without repeats, so that the same teeth are equal
 * however they were written.
 */
public record Teeth(List<ToothPosition> positions, List<Area> areas) {

  private static final Comparator<ToothPosition> ALONG_THE_ARCHES =
      Comparator.comparing((ToothPosition at) -> at.tooth().arch())
          .thenComparing(at -> at.tooth().deciduous())
          .thenComparing(at -> at.tooth().alongArch())
          .thenComparing(ToothPosition::occupant);

  /** No tooth and no area was named. */
  public static final Teeth NONE = new Teeth(List.of(), List.of());

  /**
   * @throws IllegalArgumentException if one position is given two different occupants
   */
  public Teeth {
    positions = positions.stream().distinct().sorted(ALONG_THE_ARCHES).toList();
    areas = areas.stream().distinct().sorted().toList();
    for (int at = 1; at < positions.size(); at++) {
      if (positions.get(at).tooth() == positions.get(at - 1).tooth()) {
        throw new IllegalArgumentException(
            "position " + positions.get(at).tooth() + " is given two different occupants");
      }
    }
  }

  /** Natural teeth at these positions. */
  public static Teeth of(List<Tooth> teeth) {
    return new Teeth(teeth.stream().map(ToothPosition::of).toList(), List.of());
  }

  public boolean isEmpty() {
    return positions.isEmpty() && areas.isEmpty();
  }

  /** The teeth of all positions, whatever stands there. */
  public List<Tooth> teeth() {
    return positions.stream().map(ToothPosition::tooth).toList();
  }

  /**
   * The positions grouped as {@link #words()} names them: three or more neighbours with the same
   * kind of occupant together, others alone.
   */
  public List<List<ToothPosition>> runs() {
    return ToothRun.of(positions).stream().map(ToothRun::positions).toList();
  }

  /**
   * For people, such as {@code upper right canine to upper left canine (13-23, 6 teeth), implant at
   * lower left first molar (36)}.
   */
  public String words() {
    if (isEmpty()) {
      return "no teeth named";
    }
    return Stream.concat(
            areas.stream().map(Area::words), ToothRun.of(positions).stream().map(ToothRun::words))
        .collect(Collectors.joining(", "));
  }

  /**
   * ISO 3950 numbers marked as such, such as {@code FDI 13-23} or {@code FDI 36 implant, 37 tooth};
   * a reader of any site default reads it back to the same teeth. Empty for {@link #NONE}.
   */
  public String text() {
    return text(Notation.ISO_3950);
  }

  /**
   * The same in another notation, each marked so that no reader can mistake it: {@code FDI 16},
   * {@code #3}, {@code UR6}.
   */
  public String text(Notation notation) {
    if (isEmpty()) {
      return "";
    }
    boolean sayTooth = positions.stream().anyMatch(at -> at.occupant() != Occupant.TOOTH);
    Stream<String> named =
        areas.stream().map(area -> notation == Notation.ISO_3950 ? area.iso() : area.words());
    Stream<String> runs = ToothRun.of(positions).stream().map(run -> run.text(notation, sayTooth));
    String list = Stream.concat(named, runs).collect(Collectors.joining(", "));
    return notation == Notation.ISO_3950 ? "FDI " + list : list;
  }
}
