package org.vestibule.flow;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.Order;
import org.vestibule.assign.Patient;
import org.vestibule.assign.Visit;
import org.vestibule.base.Outcome.Done;
import org.vestibule.dicom.Tags;
import org.vestibule.flow.DoorRules.Identity;
import org.vestibule.intake.Traces;
import org.vestibule.release.Pseudonyms;
import org.vestibule.release.Purpose;
import org.vestibule.release.Secrets;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.Ledger;
import org.vestibule.store.ledger.PatientRow;
import org.vestibule.store.ledger.SeenFile;
import org.vestibule.store.ledger.VisitRow;

/** Gathers what the ledger knows of a patient, their visits and files, and may not leave. */
final class ReleaseSecrets {

  /** What a practice is called that has not said. */
  private static final String NO_ID = "practice";

  private static final int NAMES_OF_A_PERSON = 3;

  private final Ledger ledger;
  private final SourceFiles files;
  private final Door door;
  private final Set<Integer> permitted;
  private final Set<String> texts = new HashSet<>();
  private final Set<String> bytes = new HashSet<>();

  /** What the purpose needs: a dentist may be called as a patient is. */
  private final Set<String> needed = new HashSet<>();

  private final Set<LocalDate> days = new HashSet<>();

  private ReleaseSecrets(Practice practice, Purpose purpose) {
    this.ledger = practice.store().ledger();
    this.files = new SourceFiles(practice);
    this.door = new Door(practice);
    this.permitted = purpose.named() ? purpose.fields() : Set.of();
  }

  /**
   * What must not be in copies of these photographs: everything known that the purpose doesn't
   * need.
   *
   * @param recipient whose name stands in named copies
   */
  static Secrets of(
      Practice practice,
      Purpose purpose,
      List<ReleasedPhoto> photos,
      Pseudonyms pseudonyms,
      String recipient) {
    ReleaseSecrets secrets = new ReleaseSecrets(practice, purpose);
    photos.forEach(secrets::photo);
    secrets.add(practice.settings().practiceName(), Tags.InstitutionName);
    if (!practice.settings().practiceId().equals(NO_ID)) {
      secrets.add(practice.settings().practiceId(), Tags.InstitutionName);
    }
    secrets.texts.removeAll(secrets.needed);
    if (purpose.named()) {
      secrets.texts.removeIf(text -> secrets.mayBeReceiver(text, photos, recipient));
    }
    if (purpose.dates() == Purpose.Dates.MODIFIED) {
      secrets.days.removeAll(secrets.moved(photos, pseudonyms));
    }
    return new Secrets(secrets.texts, secrets.days, secrets.bytes);
  }

  /**
   * True for the name of a referrer or dentist that stands in the receiver's name, word for word.
   * What is the patient's is searched for all the same.
   */
  private boolean mayBeReceiver(String text, List<ReleasedPhoto> photos, String recipient) {
    Set<String> people = new HashSet<>();
    Set<String> patients = new HashSet<>();
    for (ReleasedPhoto photo : photos) {
      Visit visit = photo.decision().visit();
      people.addAll(names(visit.referrer()));
      people.addAll(names(visit.dentist()));
      patients.addAll(names(visit.patient().name()));
    }
    return people.contains(text)
        && !patients.contains(text)
        && List.of(recipient.split("[^\\p{L}\\p{M}'-]+", -1)).contains(text);
  }

  /** Days that the copies tell instead; one of them may be a true one of another picture. */
  private Set<LocalDate> moved(List<ReleasedPhoto> photos, Pseudonyms pseudonyms) {
    Set<LocalDate> moved = new HashSet<>();
    for (ReleasedPhoto photo : photos) {
      Patient patient = photo.decision().visit().patient();
      long shift = pseudonyms.shiftDays(patient.issuer(), patient.id());
      long atDoor =
          Making.identity(photo.intent()) == Identity.DATES_MOVED
              ? door.shiftDays(patient.issuer(), patient.id())
              : 0;
      moved.add(photo.decision().visit().start().toLocalDate().plusDays(shift + atDoor));
      LocalDate day = photo.original().day();
      if (day != null) {
        moved.add(day.plusDays(shift));
      }
    }
    return moved;
  }

  private void photo(ReleasedPhoto photo) {
    Patient patient = photo.decision().visit().patient();
    person(patient.name(), Tags.PatientName);
    add(patient.id(), Tags.PatientID);
    add(patient.issuer(), Tags.IssuerOfPatientID);
    day(patient.birthDate(), Tags.PatientBirthDate);
    ledger.visits().patient(patient.issuer(), patient.id()).ifPresent(this::patient);
    visit(photo.decision().visit());
    ledger.visits().visits().stream()
        .filter(row -> row.issuer().equals(patient.issuer()))
        .filter(row -> row.patientId().equals(patient.id()))
        .forEach(this::visit);
    day(photo.original().day(), Tags.StudyDate);
    withoutIdentity(photo);
    file(photo.intent());
  }

  /** A copy of an object without identity has a pseudonym of its own, and a day of its own. */
  private void withoutIdentity(ReleasedPhoto photo) {
    if (Making.identity(photo.intent()) != Identity.KEPT) {
      texts.add(door.pseudonym(photo.decision().visit().patient()));
      LocalDateTime taken = files.facts(photo.intent().hash()).takenAt();
      day(taken == null ? null : taken.toLocalDate(), Tags.StudyDate);
    }
  }

  private void patient(PatientRow patient) {
    person(patient.name(), Tags.PatientName);
    String born = patient.birthDate();
    day(born == null ? null : LocalDate.parse(born), Tags.PatientBirthDate);
  }

  private void visit(Visit visit) {
    add(visit.key(), Tags.StudyID);
    add(visit.accessionNumber(), Tags.AccessionNumber);
    person(visit.referrer(), Tags.ReferringPhysicianName);
    person(visit.dentist(), Tags.PerformingPhysicianName);
    day(visit.start().toLocalDate(), Tags.StudyDate);
    add(visit.studyInstanceUid(), Tags.StudyInstanceUID);
    Order order = visit.order();
    if (order != null) {
      add(order.requestedProcedureId(), Tags.RequestedProcedureID);
      order.steps().forEach(step -> add(step.id(), Tags.ScheduledProcedureStepID));
    }
  }

  private void visit(VisitRow visit) {
    add(visit.key(), Tags.StudyID);
    String accession = visit.accession();
    add(accession == null ? "" : accession, Tags.AccessionNumber);
    day(LocalDate.parse(visit.starts().substring(0, 10)), Tags.StudyDate);
  }

  /**
   * UIDs, hash, file names, serial numbers, place: with them a copy could be laid beside the
   * original.
   */
  private void file(Intent intent) {
    for (Intent any : ledger.intents().of(intent.hash())) {
      texts.add(any.sopUid());
      texts.add(any.seriesUid());
      texts.add(any.studyUid());
    }
    texts.add(intent.hash().hex());
    texts.add(intent.hash().brief());
    for (SeenFile seen : ledger.arrivals().of(intent.hash())) {
      String name = seen.name().substring(seen.name().lastIndexOf('/') + 1);
      texts.add(name);
    }
    traces(new KeptTraces(ledger).of(intent.hash()));
    if (files.bytesOrReason(intent.hash()) instanceof Done<byte[]> original) {
      traces(Traces.of(original.value()));
    }
  }

  private void traces(Traces traces) {
    texts.addAll(traces.texts());
    bytes.addAll(traces.bytes());
  }

  /**
   * Family, given and middle names of each group (PS3.5 6.2, PN), each by itself; an initial, a
   * title or a degree is no name.
   */
  private void person(String pn, int tag) {
    names(pn).forEach(name -> add(name, tag));
  }

  static List<String> names(String pn) {
    List<String> names = new ArrayList<>();
    for (String group : pn.split("=", -1)) {
      List.of(group.split("\\^", -1)).stream()
          .limit(NAMES_OF_A_PERSON)
          .flatMap(component -> List.of(component.split(" ", -1)).stream())
          .filter(name -> name.length() > 1)
          .forEach(names::add);
    }
    return names;
  }

  private void add(String text, int tag) {
    if (!text.isBlank()) {
      (permitted.contains(tag) ? needed : texts).add(text.strip());
    }
  }

  private void day(@Nullable LocalDate day, int tag) {
    if (day != null && !permitted.contains(tag)) {
      days.add(day);
    }
  }
}
