package org.vestibule.flow;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.Patient;
import org.vestibule.assign.Sex;
import org.vestibule.assign.Visit;
import org.vestibule.assign.VisitList;
import org.vestibule.assign.VisitWords;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.store.ledger.PatientRow;
import org.vestibule.store.ledger.VisitRow;
import org.vestibule.store.ledger.Visits;

/** The practice's visits: those of its list, and those that the ledger knows besides. */
public final class VisitBook {

  private final Practice practice;

  public VisitBook(Practice practice) {
    this.practice = practice;
  }

  /** All visits; where list and ledger know one key, the list counts. */
  public Outcome<VisitList> all() {
    Settings settings = practice.settings();
    return VisitList.read(settings.visits(), settings.issuer()).map(this::withLedger);
  }

  private VisitList withLedger(VisitList list) {
    List<Visit> visits = new ArrayList<>(list.visits());
    Visits known = practice.store().ledger().visits();
    for (VisitRow row : known.visits()) {
      if (list.byKey(row.key()).isEmpty()) {
        known.patient(row.issuer(), row.patientId()).ifPresent(p -> visits.add(visit(row, p)));
      }
    }
    visits.sort(Comparator.comparing(Visit::start).thenComparing(Visit::key));
    return new VisitList(visits, list.warnings());
  }

  /** Adds a visit that a person typed to the practice's list; the ledger keeps who did. */
  public Outcome<Visit> add(VisitWords words, String by) {
    Settings settings = practice.settings();
    Outcome<VisitList> all = all();
    if (all instanceof Done<VisitList> known && known.value().byKey(words.visit()).isPresent()) {
      return Outcome.refused(
          "there is already a visit \"" + words.visit() + "\"", "give the new visit another key");
    }
    return VisitList.append(settings.visits(), words, settings.issuer())
        .map(
            list -> {
              Visit added = list.byKey(words.visit()).orElseThrow();
              practice.store().ledger().events().add(by, "visit added", null, added.key());
              return added;
            });
  }

  static PatientRow patientRow(Patient patient) {
    return new PatientRow(
        patient.issuer(),
        patient.id(),
        patient.name(),
        patient.birthDate() == null ? null : patient.birthDate().toString(),
        patient.sex().dicom(),
        "");
  }

  VisitRow visitRow(Visit visit) {
    return new VisitRow(
        visit.key(),
        visit.patient().issuer(),
        visit.patient().id(),
        visit.start().toString(),
        visit.end().toString(),
        practice.settings().zone().getId(),
        visit.accessionNumber(),
        visit.referrer(),
        visit.dentist(),
        visit.studyInstanceUid());
  }

  private static Visit visit(VisitRow row, PatientRow patient) {
    return new Visit(
        row.key(),
        new Patient(
            patient.id(),
            patient.issuer(),
            patient.name(),
            patient.birthDate() == null ? null : LocalDate.parse(patient.birthDate()),
            sex(patient.sex())),
        LocalDateTime.parse(row.starts()),
        LocalDateTime.parse(row.ends()),
        text(row.accession()),
        text(row.referrer()),
        text(row.dentist()),
        row.details());
  }

  private static Sex sex(@Nullable String dicom) {
    for (Sex sex : Sex.values()) {
      if (sex.dicom().equals(text(dicom))) {
        return sex;
      }
    }
    return Sex.NOT_SAID;
  }

  private static String text(@Nullable String text) {
    return text == null ? "" : text;
  }
}
