package org.vestibule.dental;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;

/**
 * The typed fields of one row of a view table. The first field that is wrong is remembered with
 * line and column; reading goes on with a substitute that is never used.
 */
final class ViewFields {

  private static final TeethReader TEETH = new TeethReader(Notation.ISO_3950);
  private static final PatientOrientation NO_ORIENTATION = new PatientOrientation("L", "F");
  private static final Code NO_CODE = new Code("", "", "");

  private final CsvTable.Row row;
  private Optional<Outcome.Refused<View>> refusal = Optional.empty();

  ViewFields(CsvTable.Row row) {
    this.row = row;
  }

  /** The first thing that was wrong. */
  Optional<Outcome.Refused<View>> firstRefusal() {
    return refusal;
  }

  void refuse(String column, String reason, String advice) {
    if (refusal.isEmpty()) {
      refusal =
          Optional.of(
              new Outcome.Refused<>(
                  "line " + row.line() + ", column " + column + ": " + reason, advice));
    }
  }

  String required(String column) {
    if (row.get(column).isEmpty()) {
      refuse(column, "the field is empty", "every view needs it");
    }
    return row.get(column);
  }

  List<String> list(String column) {
    return row.list(column);
  }

  List<Tooth> teeth(String column) {
    if (row.get(column).isEmpty()) {
      return List.of();
    }
    Outcome<Teeth> teeth = TEETH.read(row.get(column));
    if (teeth instanceof Outcome.Refused<Teeth> refused) {
      refuse(column, refused.reason(), refused.advice());
      return List.of();
    }
    return teeth.orThrow().teeth();
  }

  Code requiredCode(String column, int cid) {
    required(column);
    Code code = code(column, cid);
    return code == null ? NO_CODE : code;
  }

  @Nullable Code code(String column, int... cids) {
    return row.get(column).isEmpty() ? null : lookUp(column, row.get(column), cids);
  }

  /** The SNOMED CT code with this value in one of the groups. */
  @Nullable Code lookUp(String column, String value, int... cids) {
    List<String> names = new ArrayList<>();
    for (int cid : cids) {
      Optional<Code> code = ContextGroup.of(cid).flatMap(group -> group.sct(value));
      if (code.isPresent()) {
        return code.get();
      }
      names.add("CID " + cid);
    }
    String where = String.join(" or ", names);
    refuse(
        column, "\"" + value + "\" is not a code of " + where, "use a SNOMED CT value of " + where);
    return null;
  }

  PatientOrientation orientation(String column) {
    Optional<PatientOrientation> read = PatientOrientation.parse(required(column));
    if (read.isEmpty()) {
      refuse(
          column,
          "\"" + row.get(column) + "\" is not a Patient Orientation",
          "write the directions of image right and image down, such as L\\F");
    }
    return read.orElse(NO_ORIENTATION);
  }

  @Nullable PatientOrientation orientationOrNone(String column) {
    return row.get(column).isEmpty() ? null : orientation(column);
  }

  Direction direction(String column) {
    String letter = required(column);
    Optional<Direction> direction =
        letter.length() == 1 ? Direction.of(letter.charAt(0)) : Optional.empty();
    if (direction.isEmpty()) {
      refuse(column, "\"" + letter + "\" is no direction", "use A, P, R, L, H or F");
    }
    return direction.orElse(NO_ORIENTATION.looking());
  }

  <T> T one(String column, Map<String, T> choices, T substitute) {
    T chosen = choices.get(row.get(column));
    if (chosen == null) {
      refuse(
          column,
          "\"" + row.get(column) + "\" is not one of the choices",
          "use " + String.join(", ", choices.keySet().stream().sorted().toList()));
      return substitute;
    }
    return chosen;
  }

  <T> @Nullable T oneOrNone(String column, Map<String, T> choices) {
    if (row.get(column).isEmpty()) {
      return null;
    }
    T chosen = choices.get(row.get(column));
    if (chosen == null) {
      refuse(
          column,
          "\"" + row.get(column) + "\" is not one of the choices",
          "use " + String.join(", ", choices.keySet().stream().sorted().toList()) + ", or nothing");
    }
    return chosen;
  }
}
