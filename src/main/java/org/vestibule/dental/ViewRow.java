package org.vestibule.dental;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;

/** Reads one row of a view table; whatever is wrong is told by line and column. */
final class ViewRow {

  private static final List<String> COLUMNS =
      List.of(
          "key",
          "name",
          "words",
          "permanent",
          "mixed",
          "deciduous",
          "region",
          "structure",
          "view",
          "modifiers",
          "shown",
          "shown_incisors_up",
          "looking",
          "usual",
          "series",
          "arch",
          "side",
          "occlusal",
          "face");
  private static final Map<String, Mirror> USUAL =
      Map.of("direct", Mirror.NONE, "mirror", Mirror.AS_SHOT, "either", Mirror.UNKNOWN);
  private static final TeethReader TEETH = new TeethReader(Notation.ISO_3950);

  /** Carries a refusal out of the reading of a row; never leaves this class. */
  private static final class Wrong extends RuntimeException {
    private final transient Outcome.Refused<View> refusal;

    Wrong(Outcome<View> refusal) {
      super(null, null, false, false);
      this.refusal = (Outcome.Refused<View>) refusal;
    }
  }

  private final CsvTable.Row row;

  private ViewRow(CsvTable.Row row) {
    this.row = row;
  }

  static <T> Optional<Outcome<T>> refuseHeader(CsvTable table) {
    return table.columns().equals(COLUMNS)
        ? Optional.empty()
        : Optional.of(
            Outcome.refused(
                "the view table's columns are " + String.join(", ", table.columns()),
                "they must be " + String.join(", ", COLUMNS)));
  }

  static Outcome<View> read(CsvTable.Row row) {
    try {
      return Outcome.done(new ViewRow(row).view());
    } catch (Wrong wrong) {
      return wrong.refusal;
    }
  }

  private View view() {
    PatientOrientation shown = orientation("shown");
    PatientOrientation up =
        row.get("shown_incisors_up").isEmpty() ? null : orientation("shown_incisors_up");
    Direction looking = looking(shown, up);
    boolean occlusal = yes("occlusal");
    requireLandmark(shown, occlusal);
    return new View(
        key(),
        required("name"),
        words(),
        usualTeeth(),
        requiredCode("region", 4028),
        code("structure", row.get("structure"), 4061),
        code("view", row.get("view"), 4062, 4063),
        modifiers(),
        shown,
        up,
        looking,
        one("usual", USUAL),
        series(),
        oneOrNone("arch", Map.of("upper", Arch.UPPER, "lower", Arch.LOWER)),
        oneOrNone("side", Map.of("right", Side.RIGHT, "left", Side.LEFT)),
        occlusal,
        yes("face"));
  }

  private Wrong wrong(String column, String reason, String advice) {
    return new Wrong(row.refused(column, reason, advice));
  }

  private String required(String column) {
    if (row.get(column).isEmpty()) {
      throw wrong(column, "the field is empty", "every view needs a " + column);
    }
    return row.get(column);
  }

  private String key() {
    String key = required("key");
    if (!key.matches("[a-z0-9]+(-[a-z0-9]+)*")) {
      throw wrong(
          "key", "\"" + key + "\" is not a key", "use small letters, digits and single hyphens");
    }
    return key;
  }

  private List<String> words() {
    return Stream.concat(Stream.of(required("name"), key()), row.list("words").stream())
        .map(phrase -> phrase.toLowerCase(Locale.ROOT))
        .distinct()
        .toList();
  }

  private UsualTeeth usualTeeth() {
    return new UsualTeeth(teeth("permanent"), teeth("mixed"), teeth("deciduous"));
  }

  private List<Tooth> teeth(String column) {
    if (row.get(column).isEmpty()) {
      return List.of();
    }
    Outcome<Teeth> teeth = TEETH.read(row.get(column));
    if (teeth instanceof Outcome.Refused<Teeth> refused) {
      throw wrong(column, refused.reason(), refused.advice());
    }
    return teeth.orThrow().teeth();
  }

  private Code requiredCode(String column, int cid) {
    Code code = code(column, required(column), cid);
    if (code == null) {
      throw new IllegalStateException("a required code was blank");
    }
    return code;
  }

  private @Nullable Code code(String column, String value, int... cids) {
    if (value.isEmpty()) {
      return null;
    }
    List<String> names = new ArrayList<>();
    for (int cid : cids) {
      Optional<Code> code = ContextGroup.of(cid).flatMap(group -> group.sct(value));
      if (code.isPresent()) {
        return code.get();
      }
      names.add("CID " + cid);
    }
    String where = String.join(" or ", names);
    throw wrong(
        column, "\"" + value + "\" is not a code of " + where, "use a SNOMED CT value of " + where);
  }

  private List<Code> modifiers() {
    List<Code> codes = new ArrayList<>();
    for (String value : row.list("modifiers")) {
      Code code = code("modifiers", value, 4064, 4065);
      if (code != null) {
        codes.add(code);
      }
    }
    if (!codes.isEmpty() && row.get("view").isEmpty()) {
      throw wrong(
          "modifiers", "modifiers stand without a view code", "add a view code, or drop them");
    }
    return codes;
  }

  private PatientOrientation orientation(String column) {
    return PatientOrientation.parse(required(column))
        .orElseThrow(
            () ->
                wrong(
                    column,
                    "\"" + row.get(column) + "\" is not a Patient Orientation",
                    "write the directions of image right and image down, such as L\\F"));
  }

  private Direction looking(PatientOrientation shown, @Nullable PatientOrientation up) {
    String letter = required("looking");
    Direction looking =
        Optional.of(letter)
            .filter(text -> text.length() == 1)
            .flatMap(text -> Direction.of(text.charAt(0)))
            .orElseThrow(
                () -> wrong("looking", "\"" + letter + "\" is no direction", "use A P R L H or F"));
    if (!shown.handednessFits(looking)) {
      throw mirrored("shown", shown, looking);
    }
    if (up != null && !up.handednessFits(looking)) {
      throw mirrored("shown_incisors_up", up, looking);
    }
    return looking;
  }

  private Wrong mirrored(String column, PatientOrientation shown, Direction looking) {
    return wrong(
        column,
        shown.text() + " is not what a camera looking towards " + looking.letter() + " sees",
        "it would show a mirror image or another side; correct this or the looking column");
  }

  private void requireLandmark(PatientOrientation shown, boolean occlusal) {
    boolean fits =
        occlusal
            ? shown.edgeOf(Direction.ANTERIOR).isPresent()
            : shown.edgeOf(Direction.HEAD).filter(Edge.TOP::equals).isPresent();
    if (!fits) {
      throw wrong(
          "shown",
          shown.text()
              + (occlusal ? " has no margin at the incisors" : " does not have up at the top"),
          occlusal ? "one letter must be A or P" : "the second letter must be F");
    }
  }

  private Set<Series> series() {
    Set<Series> all = EnumSet.noneOf(Series.class);
    for (String words : row.list("series")) {
      all.add(
          Stream.of(Series.values())
              .filter(series -> series.words().equals(words))
              .findFirst()
              .orElseThrow(
                  () ->
                      wrong(
                          "series",
                          "\"" + words + "\" is not a series",
                          "see the standard table")));
    }
    return all;
  }

  private boolean yes(String column) {
    return one(column, Map.of("yes", true, "no", false));
  }

  private <T> T one(String column, Map<String, T> choices) {
    T chosen = choices.get(row.get(column));
    if (chosen == null) {
      throw wrong(
          column,
          "\"" + row.get(column) + "\" is not one of the choices",
          "use " + String.join(", ", choices.keySet().stream().sorted().toList()));
    }
    return chosen;
  }

  private <T> @Nullable T oneOrNone(String column, Map<String, T> choices) {
    return row.get(column).isEmpty() ? null : one(column, choices);
  }
}
