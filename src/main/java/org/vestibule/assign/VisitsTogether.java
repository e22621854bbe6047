package org.vestibule.assign;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Collects visits and refuses those that contradict each other. */
final class VisitsTogether {

  private record Known(int row, Patient patient) {}

  private final List<String> warnings;
  private final List<Visit> visits = new ArrayList<>();
  private final Map<String, Integer> rowOfKey = new HashMap<>();
  private final Map<String, Known> patients = new HashMap<>();
  private final Map<String, Known> names = new HashMap<>();

  VisitsTogether(List<String> warnings) {
    this.warnings = warnings;
  }

  void add(TableRow row, Visit visit) throws Refusal {
    Integer earlier = rowOfKey.putIfAbsent(fold(visit.key()), row.number());
    if (earlier != null) {
      throw row.refusal(
          "visit",
          "row " + earlier + " has the same key",
          "give each visit a key of its own, such as the date and a number");
    }
    Patient patient = visit.patient();
    Known known = patients.get(number(patient));
    if (known != null) {
      refuseOther(row, known, patient);
    }
    patients.put(
        number(patient),
        new Known(row.number(), known == null ? patient : known.patient().fuller(patient)));
    Known namesake = names.putIfAbsent(fold(patient.name()), new Known(row.number(), patient));
    if (namesake != null && !sameNumber(namesake.patient(), patient)) {
      warnings.add(
          "rows "
              + namesake.row()
              + " and "
              + row.number()
              + ", column name: two patients with different numbers have the same name; take care");
    }
    visits.add(visit);
  }

  /** All visits, each with everything that any row says of its patient. */
  List<Visit> all() {
    return visits.stream().map(this::withFullPatient).toList();
  }

  private Visit withFullPatient(Visit visit) {
    Known known = patients.get(number(visit.patient()));
    return known == null ? visit : visit.of(known.patient());
  }

  private static void refuseOther(TableRow row, Known known, Patient patient) throws Refusal {
    Optional<String> column = known.patient().contradiction(patient);
    if (column.isPresent()) {
      throw row.refusal(
          column.get(),
          "row " + known.row() + " has the same patient number with another " + column.get(),
          "find out whether these are two patients, and correct the list");
    }
  }

  /** True if all are visits of one patient. */
  static boolean onePatient(List<Visit> visits) {
    return visits.stream().allMatch(visit -> sameNumber(visit.patient(), visits.get(0).patient()));
  }

  static boolean sameName(Patient one, Patient other) {
    return fold(one.name()).equals(fold(other.name()));
  }

  static boolean sameNumber(Patient one, Patient other) {
    return number(one).equals(number(other));
  }

  private static String number(Patient patient) {
    return fold(patient.issuer()) + "\n" + fold(patient.id());
  }

  private static String fold(String text) {
    return text.toLowerCase(Locale.ROOT);
  }
}
