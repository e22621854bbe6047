package org.vestibule.flow;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.vestibule.assign.Disputed;
import org.vestibule.assign.Patient;
import org.vestibule.assign.Sex;
import org.vestibule.assign.Visit;
import org.vestibule.assign.VisitList;
import org.vestibule.forward.worklist.WorklistEntry;
import org.vestibule.store.ledger.Ledger;
import org.vestibule.store.ledger.OrderRow;
import org.vestibule.store.ledger.VisitRow;

/** Takes orders into the ledger one by one, and gathers what is to be told of it. */
final class OrderTaking {

  private final Practice practice;
  private final Ledger ledger;
  private final VisitList visits;
  private final String who;
  private final Set<String> keys = new HashSet<>();
  private final List<String> added = new ArrayList<>();
  private final List<String> changed = new ArrayList<>();
  private final List<String> concerns = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();
  private final List<Patient> taken = new ArrayList<>();
  private int known;

  OrderTaking(Practice practice, VisitList visits, String who) {
    this.practice = practice;
    this.ledger = practice.store().ledger();
    this.visits = visits;
    this.who = who;
  }

  void concern(String sentence) {
    concerns.add(sentence);
  }

  void note(String sentence) {
    notes.add(sentence);
  }

  FetchedOrders report(LocalDate day) {
    return new FetchedOrders(day, added, known, changed, concerns, notes);
  }

  /** Takes all steps of one study; within a transaction. */
  void take(List<WorklistEntry> steps) {
    KeptOrder order = KeptOrder.of(steps, issuer(steps.get(0)));
    Patient patient = patient(steps.get(0), order);
    Optional<String> against = against(steps, patient);
    if (against.isPresent()) {
      concern("order " + order.words() + ": " + against.get());
      return;
    }
    Optional<OrderRow> before = before(order);
    if (before.isPresent()) {
      again(order, before.get(), patient);
      return;
    }
    Optional<Visit> listed = listed(order, patient);
    if (listed.isPresent()) {
      keep(listed.get().key(), order);
      changed.add("visit " + listed.get().key() + " is the one of order " + order.words() + " now");
    } else {
      begin(order, patient);
    }
  }

  /**
   * Who gave the patient's number. Where one side names nobody, the same number is the same
   * patient's; if the details contradict each other then, nothing is taken over.
   */
  private String issuer(WorklistEntry entry) {
    String told = entry.issuer().isEmpty() ? practice.settings().issuer() : entry.issuer();
    List<String> recorded =
        everybody()
            .filter(patient -> patient.id().equalsIgnoreCase(entry.patientId()))
            .map(Patient::issuer)
            .distinct()
            .toList();
    boolean knows = recorded.stream().anyMatch(told::equalsIgnoreCase);
    return knows
        ? told
        : recorded.stream()
            .filter(issuer -> issuer.isEmpty() || told.isEmpty())
            .findFirst()
            .orElse(told);
  }

  private Patient patient(WorklistEntry entry, KeptOrder order) {
    Sex sex = Sex.NOT_SAID;
    for (Sex one : Sex.values()) {
      sex = one.dicom().equals(entry.sex()) ? one : sex;
    }
    return new Patient(entry.patientId(), order.issuer(), entry.name(), entry.birthDate(), sex);
  }

  /** Why the record, the list or the orders themselves speak against an order's patient. */
  private Optional<String> against(List<WorklistEntry> steps, Patient patient) {
    boolean onePatient =
        steps.stream()
            .allMatch(
                step ->
                    step.patientId().equals(steps.get(0).patientId())
                        && step.name().equals(steps.get(0).name()));
    if (!onePatient) {
      return Optional.of(
          "its steps are of different patients, so it was not taken over; have it put right where"
              + " the orders come from");
    }
    return everybody()
        .flatMap(known -> known.contradiction(patient).stream())
        .findFirst()
        .map(
            column ->
                "the worklist gives this patient's number another "
                    + column
                    + " than the record, so it was not taken over; find out whose number it is, and"
                    + " have the wrong one put right");
  }

  /** All patients of record, list and this fetch. */
  private Stream<Patient> everybody() {
    Stream<Visit> listed =
        Stream.concat(visits.visits().stream(), visits.disputed().stream().map(Disputed::visit));
    return Stream.concat(listed.map(Visit::patient), taken.stream());
  }

  private Optional<OrderRow> before(KeptOrder order) {
    return ledger.orders().latest().stream()
        .filter(row -> KeptOrder.read(row.json()).studyUid().equals(order.studyUid()))
        .findFirst();
  }

  /**
   * A visit of the practice's own list that this order is for: same patient, same number or UID.
   */
  private Optional<Visit> listed(KeptOrder order, Patient patient) {
    return visits.visits().stream()
        .filter(
            visit ->
                visit.studyInstanceUid().equals(order.studyUid())
                    || (!order.accessionNumber().isEmpty()
                        && visit.accessionNumber().equals(order.accessionNumber())))
        .filter(
            visit ->
                visit.patient().id().equalsIgnoreCase(patient.id())
                    && visit.patient().issuer().equalsIgnoreCase(patient.issuer()))
        .findFirst();
  }

  private void again(KeptOrder order, OrderRow row, Patient patient) {
    KeptOrder earlier = KeptOrder.read(row.json());
    if (!earlier.patientId().equals(order.patientId())
        || !earlier.issuer().equals(order.issuer())) {
      concern(
          "order "
              + order.words()
              + " is another patient's than when it was fetched before; visit "
              + row.visit()
              + " was left as it is: find out whose it is before anything is filed under it");
      return;
    }
    List<String> differences = earlier.differences(order);
    if (differences.isEmpty()) {
      known++;
    } else if (isFiled(row.visit())) {
      concern(
          "order "
              + order.words()
              + " was changed ("
              + String.join(", ", differences)
              + ") since photographs were filed under visit "
              + row.visit()
              + "; the visit was left as it was filed");
    } else {
      keep(row.visit(), order);
      ledger
          .visits()
          .visit(row.visit())
          .filter(visit -> visit.details().equals(order.studyUid()))
          .ifPresent(visit -> put(visit.key(), order, patient));
      changed.add(
          "order "
              + order.words()
              + ", visit "
              + row.visit()
              + ": "
              + String.join(", ", differences)
              + " changed");
    }
  }

  private void begin(KeptOrder order, Patient patient) {
    String key = freeKey(order);
    put(key, order, patient);
    keep(key, order);
    added.add(key);
  }

  private void keep(String key, KeptOrder order) {
    keys.add(key.toLowerCase(Locale.ROOT));
    ledger
        .orders()
        .add(new OrderRow(key, who, order.stepId(), order.json(), practice.clock().instant()), who);
  }

  private void put(String key, KeptOrder order, Patient patient) {
    Patient full =
        everybody()
            .filter(
                one ->
                    one.id().equalsIgnoreCase(patient.id())
                        && one.issuer().equalsIgnoreCase(patient.issuer()))
            .findFirst()
            .map(one -> one.fuller(patient))
            .orElse(patient);
    taken.add(full);
    LocalDateTime start = LocalDateTime.parse(order.start());
    ledger.visits().put(VisitBook.patientRow(full), who);
    ledger
        .visits()
        .put(
            new VisitRow(
                key,
                full.issuer(),
                full.id(),
                start.toString(),
                start.plus(practice.settings().worklist().length()).toString(),
                practice.settings().zone().getId(),
                order.accessionNumber(),
                order.referrer(),
                order.dentist(),
                order.studyUid()),
            who);
  }

  /** The order's own number if no other visit has it for its key. */
  private String freeKey(KeptOrder order) {
    String base =
        order.words().equals("without a number")
            ? order.start().substring(0, "2026-03-12".length())
            : order.words();
    String key = base;
    for (int n = 2; visits.knows(key) || keys.contains(key.toLowerCase(Locale.ROOT)); n++) {
      key = base + "-" + n;
    }
    return key;
  }

  private boolean isFiled(String visit) {
    return !new PhotoMarks(practice).everUnder(visit).isEmpty();
  }

  /** Orders of the day that the worklist told before and tells no more. */
  void vanished(LocalDate day, Set<String> told) {
    for (OrderRow row : ledger.orders().latest()) {
      KeptOrder order = KeptOrder.read(row.json());
      boolean sameDay = LocalDateTime.parse(order.start()).toLocalDate().equals(day);
      if (row.station().equals(who)
          && sameDay
          && !told.contains(order.studyUid())
          && !isFiled(row.visit())) {
        note(
            "order "
                + order.words()
                + " is on the worklist no more; visit "
                + row.visit()
                + " stays, and nothing is filed under it yet");
      }
    }
  }
}
