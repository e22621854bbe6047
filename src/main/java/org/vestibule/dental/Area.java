package org.vestibule.dental;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A part of the dentition with a code of its own (ISO 3950, from memory). */
public enum Area {
  MOUTH("00"),
  UPPER_ARCH("01"),
  LOWER_ARCH("02"),
  UPPER_RIGHT_QUADRANT("10"),
  UPPER_LEFT_QUADRANT("20"),
  LOWER_LEFT_QUADRANT("30"),
  LOWER_RIGHT_QUADRANT("40"),
  UPPER_RIGHT_SEXTANT("03"),
  UPPER_FRONT_SEXTANT("04"),
  UPPER_LEFT_SEXTANT("05"),
  LOWER_LEFT_SEXTANT("06"),
  LOWER_FRONT_SEXTANT("07"),
  LOWER_RIGHT_SEXTANT("08");

  private static final String ORAL_CAVITY = "74262004";
  private static final String UPPER = "39481002";
  private static final String LOWER = "88176008";
  private static final String FIRST_SEXTANT = "03";
  private static final String LAST_SEXTANT = "08";

  /** CID 2, edition 2026b; meanings from memory. */
  private static final Code ANTERIOR = new Code("SCT", "255549009", "Anterior");

  private static final Code POSTERIOR = new Code("SCT", "255551008", "Posterior");

  private static final Map<Area, CsvTable.Row> ROWS = rows();
  private static final Map<Area, List<String>> SAYS = ofEach(area -> area.row().list("says"));
  private static final Map<String, Area> BY_SAYING = bySaying();

  private final String iso;

  Area(String iso) {
    this.iso = iso;
  }

  /** The two-digit code, such as {@code 00} or {@code 10}. */
  public String iso() {
    return iso;
  }

  /** Such as {@code upper right quadrant}. */
  public String words() {
    return row().get("words");
  }

  /** All phrases people use for it. */
  public List<String> says() {
    return Objects.requireNonNull(SAYS.get(this));
  }

  /** The teeth that stand in it, permanent and deciduous, along the arch. */
  public List<Tooth> teeth() {
    return Objects.requireNonNull(InThem.TEETH.get(this));
  }

  /** Found once, when they are first asked for. */
  private static final class InThem {
    private static final Map<Area, List<Tooth>> TEETH = ofEach(InThem::teeth);

    private static List<Tooth> teeth(Area area) {
      return area == MOUTH ? Tooth.all() : area.alongTheArch();
    }
  }

  private List<Tooth> alongTheArch() {
    return Stream.of("permanent", "deciduous")
        .map(dentition -> row().get(dentition).split("-", 2))
        .flatMap(ends -> ArchRange.between(isoTooth(ends[0]), isoTooth(ends[1])).orThrow().stream())
        .toList();
  }

  /**
   * The nearest primary anatomic structure: an arch, or the oral cavity for the whole mouth (CID
   * 4061).
   */
  public Code structure() {
    String value =
        this == MOUTH ? ORAL_CAVITY : teeth().get(0).arch() == Arch.UPPER ? UPPER : LOWER;
    return ContextGroup.of(4061)
        .flatMap(group -> group.sct(value))
        .orElseThrow(() -> new IllegalStateException("CID 4061 lacks " + value));
  }

  /**
   * What narrows the structure down to the area (CID 2): the side for a quadrant, the side and back
   * for a side sextant, the front for a front one.
   */
  public List<Code> structureModifiers() {
    boolean oneSided = teeth().stream().map(Tooth::side).distinct().count() == 1;
    boolean sextant = iso.compareTo(FIRST_SEXTANT) >= 0 && iso.compareTo(LAST_SEXTANT) <= 0;
    List<Code> modifiers = new ArrayList<>();
    if (oneSided) {
      modifiers.add(teeth().get(0).side().code());
    }
    if (sextant) {
      modifiers.add(oneSided ? POSTERIOR : ANTERIOR);
    }
    return List.copyOf(modifiers);
  }

  /** The area that a structure and its modifiers stand for, in any order. */
  public static Optional<Area> ofCodes(Code structure, Collection<Code> modifiers) {
    return Stream.of(values())
        .filter(area -> area.structure().sameConcept(structure))
        .filter(area -> values(area.structureModifiers()).equals(values(modifiers)))
        .findFirst();
  }

  private static Set<String> values(Collection<Code> codes) {
    return codes.stream().map(Code::value).collect(Collectors.toSet());
  }

  static Optional<Area> byIso(String digits) {
    for (Area area : values()) {
      if (area.iso.equals(digits)) {
        return Optional.of(area);
      }
    }
    return Optional.empty();
  }

  static Optional<Area> bySaying(String phrase) {
    return Optional.ofNullable(BY_SAYING.get(phrase));
  }

  private static Map<String, Area> bySaying() {
    Map<String, Area> phrases = new HashMap<>();
    for (Area area : values()) {
      area.says().forEach(phrase -> phrases.putIfAbsent(phrase, area));
    }
    return Map.copyOf(phrases);
  }

  private static Tooth isoTooth(String digits) {
    return Tooth.ofIso(Integer.parseInt(digits)).orThrow();
  }

  private CsvTable.Row row() {
    return Objects.requireNonNull(ROWS.get(this));
  }

  private static Map<Area, CsvTable.Row> rows() {
    CsvTable table = CsvTable.ofResource("areas.csv");
    return ofEach(
        area ->
            table.rows().stream()
                .filter(row -> row.get("iso").equals(area.iso))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("areas.csv has no row " + area.iso)));
  }

  private static <T> Map<Area, T> ofEach(Function<Area, T> found) {
    Map<Area, T> each = new EnumMap<>(Area.class);
    for (Area area : values()) {
      each.put(area, found.apply(area));
    }
    return each;
  }
}
