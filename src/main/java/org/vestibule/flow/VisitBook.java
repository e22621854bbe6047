package org.vestibule.flow;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.Disputed;
import org.vestibule.assign.Patient;
import org.vestibule.assign.Sex;
import org.vestibule.assign.Visit;
import org.vestibule.assign.VisitList;
import org.vestibule.assign.VisitWords;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.store.ledger.OrderRow;
import org.vestibule.store.ledger.PatientRow;
import org.vestibule.store.ledger.VisitRow;
import org.vestibule.store.ledger.Visits;

/** The practice's visits: those of its list, and those that the ledger knows besides. */
public final class VisitBook {

  private static final String LIST = "the visit list";

  private final Practice practice;

  public VisitBook(Practice practice) {
    this.practice = practice;
  }

  /**
   * All visits of list and ledger. What the list says of a patient otherwise than the ledger is
   * disputed, and nothing is filed under it.
   */
  public Outcome<VisitList> all() {
    Settings settings = practice.settings();
    return Lists.named(LIST, VisitList.read(settings.visits(), settings.issuer()))
        .map(list -> ordered(list.with(recorded())));
  }

  /** Each visit with what was ordered for it, if the order is that patient's. */
  private VisitList ordered(VisitList list) {
    Map<String, KeptOrder> orders = new HashMap<>();
    for (OrderRow row : practice.store().ledger().orders().latest()) {
      orders.put(row.visit().toLowerCase(Locale.ROOT), KeptOrder.read(row.json()));
    }
    if (orders.isEmpty()) {
      return list;
    }
    List<Visit> visits = list.visits().stream().map(visit -> ordered(visit, orders)).toList();
    return new VisitList(visits, list.disputed(), list.warnings(), list.plans());
  }

  private static Visit ordered(Visit visit, Map<String, KeptOrder> orders) {
    KeptOrder order = orders.get(visit.key().toLowerCase(Locale.ROOT));
    boolean same =
        order != null
            && visit.patient().id().equalsIgnoreCase(order.patientId())
            && visit.patient().issuer().equalsIgnoreCase(order.issuer());
    return order == null || !same
        ? visit
        : visit.ordered(order.accessionNumber(), order.referrer(), order.studyUid(), order.order());
  }

  private List<Visit> recorded() {
    List<Visit> recorded = new ArrayList<>();
    Visits known = practice.store().ledger().visits();
    for (VisitRow row : known.visits()) {
      known.patient(row.issuer(), row.patientId()).ifPresent(p -> recorded.add(visit(row, p)));
    }
    return recorded;
  }

  /**
   * Takes a patient's details as the list has them into the record, because a person says that they
   * did change.
   *
   * @return the patient as recorded now
   */
  public Outcome<Patient> confirm(String number, String by) {
    return all().then(list -> confirm(list, number, by));
  }

  private Outcome<Patient> confirm(VisitList list, String number, String by) {
    List<Patient> changed =
        list.disputed().stream()
            .filter(Disputed::ofPatient)
            .map(against -> against.visit().patient())
            .filter(patient -> patient.id().equalsIgnoreCase(number.strip()))
            .distinct()
            .toList();
    if (changed.isEmpty()) {
      return Outcome.refused(
          "the visit list says nothing about this number that the record doesn't say",
          "check the number, leading zeros included");
    }
    if (changed.size() > 1) {
      return Outcome.refused(
          "two issuers gave this number to different patients",
          "leave the visits of one of them out of the list for now, then confirm the other");
    }
    Patient patient =
        recorded().stream()
            .map(Visit::patient)
            .filter(known -> known.contradiction(changed.get(0)).isPresent())
            .findFirst()
            .orElseThrow()
            .changedTo(changed.get(0));
    practice.store().ledger().visits().put(patientRow(patient), by);
    practice.store().ledger().events().add(by, "patient confirmed", null, patient.id());
    return Outcome.done(patient);
  }

  /** Adds a visit that a person typed to the practice's list; the ledger keeps who did. */
  public Outcome<Visit> add(VisitWords words, String by) {
    Settings settings = practice.settings();
    Outcome<VisitList> all = all();
    if (all instanceof Done<VisitList> known && known.value().knows(words.visit())) {
      return Outcome.refused(
          "there is already a visit \"" + words.visit() + "\"", "give the new visit another key");
    }
    return Lists.named(LIST, VisitList.append(settings.visits(), words, settings.issuer()))
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
