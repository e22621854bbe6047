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

/** Makes a view of one row of a view table. */
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
  private static final Map<String, Arch> ARCHES = Map.of("upper", Arch.UPPER, "lower", Arch.LOWER);
  private static final Map<String, Side> SIDES = Map.of("right", Side.RIGHT, "left", Side.LEFT);
  private static final Map<String, Boolean> YES_NO = Map.of("yes", true, "no", false);

  private final ViewFields fields;

  private ViewRow(ViewFields fields) {
    this.fields = fields;
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
    return new ViewRow(new ViewFields(row)).view();
  }

  private Outcome<View> view() {
    String key = key();
    List<String> words = words(key);
    UsualTeeth teeth =
        new UsualTeeth(fields.teeth("permanent"), fields.teeth("mixed"), fields.teeth("deciduous"));
    Code region = fields.requiredCode("region", 4028);
    Code structure = fields.code("structure", 4061);
    Code view = fields.code("view", 4062, 4063);
    List<Code> modifiers = modifiers(view);
    PatientOrientation shown = fields.orientation("shown");
    PatientOrientation incisorsUp = fields.orientationOrNone("shown_incisors_up");
    Direction looking = looking(shown, incisorsUp);
    Mirror usual = fields.one("usual", USUAL, Mirror.UNKNOWN);
    Set<Series> series = series();
    Arch arch = fields.oneOrNone("arch", ARCHES);
    Side side = fields.oneOrNone("side", SIDES);
    boolean occlusal = fields.one("occlusal", YES_NO, false);
    boolean face = fields.one("face", YES_NO, false);
    requireLandmark(shown, occlusal);
    if (incisorsUp != null && !occlusal) {
      fields.refuse(
          "shown_incisors_up", "only occlusal views have a second layout", "leave the field empty");
    }
    String name = fields.required("name");
    return fields
        .firstRefusal()
        .map(Outcome.Refused::<View>as)
        .<Outcome<View>>map(refused -> refused)
        .orElseGet(
            () ->
                Outcome.done(
                    new View(
                        key,
                        name,
                        words,
                        teeth,
                        region,
                        structure,
                        view,
                        modifiers,
                        shown,
                        incisorsUp,
                        looking,
                        usual,
                        series,
                        arch,
                        side,
                        occlusal,
                        face)));
  }

  private String key() {
    String key = fields.required("key");
    if (!key.matches("[a-z0-9]+(-[a-z0-9]+)*")) {
      fields.refuse(
          "key", "\"" + key + "\" is not a key", "use small letters, digits and single hyphens");
    }
    return key;
  }

  private List<String> words(String key) {
    return Stream.concat(Stream.of(fields.required("name"), key), fields.list("words").stream())
        .map(phrase -> phrase.toLowerCase(Locale.ROOT))
        .distinct()
        .toList();
  }

  private List<Code> modifiers(@Nullable Code view) {
    List<Code> codes = new ArrayList<>();
    for (String value : fields.list("modifiers")) {
      Code code = fields.lookUp("modifiers", value, 4064, 4065);
      if (code != null) {
        codes.add(code);
      }
    }
    if (!codes.isEmpty() && view == null) {
      fields.refuse(
          "modifiers", "modifiers stand without a view code", "add a view code, or drop them");
    }
    return codes;
  }

  private Direction looking(PatientOrientation shown, @Nullable PatientOrientation incisorsUp) {
    Direction looking = fields.direction("looking");
    if (!shown.handednessFits(looking)) {
      refuseMirrored("shown", shown, looking);
    }
    if (incisorsUp != null && !incisorsUp.handednessFits(looking)) {
      refuseMirrored("shown_incisors_up", incisorsUp, looking);
    }
    return looking;
  }

  private void refuseMirrored(String column, PatientOrientation shown, Direction looking) {
    fields.refuse(
        column,
        shown.text() + " is not what a camera looking towards " + looking.letter() + " sees",
        "it would show a mirror image or another side; correct this or the looking column");
  }

  private void requireLandmark(PatientOrientation shown, boolean occlusal) {
    if (occlusal && shown.edgeOf(Direction.ANTERIOR).isEmpty()) {
      fields.refuse(
          "shown", shown.text() + " has no margin at the incisors", "one letter must be A or P");
    }
    if (!occlusal && shown.edgeOf(Direction.HEAD).filter(Edge.TOP::equals).isEmpty()) {
      fields.refuse(
          "shown", shown.text() + " does not have up at the top", "the second letter must be F");
    }
  }

  private Set<Series> series() {
    Set<Series> all = EnumSet.noneOf(Series.class);
    for (String words : fields.list("series")) {
      Optional<Series> named =
          Stream.of(Series.values()).filter(one -> one.words().equals(words)).findFirst();
      named.ifPresent(all::add);
      if (named.isEmpty()) {
        fields.refuse(
            "series",
            "\"" + words + "\" is not a series",
            "use " + String.join(", ", Stream.of(Series.values()).map(Series::words).toList()));
      }
    }
    return all;
  }
}
