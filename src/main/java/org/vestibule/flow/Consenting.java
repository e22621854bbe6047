package org.vestibule.flow;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.vestibule.assign.NamedRows;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.release.Purpose;
import org.vestibule.release.Purposes;
import org.vestibule.store.ledger.ConsentRow;
import org.vestibule.store.ledger.Ledger;
import org.vestibule.store.ledger.PatientRow;
import org.vestibule.store.ledger.ReleaseRow;

/** What patients agree to: recorded, listed, taken back. Nothing is ever deleted. */
public final class Consenting {

  private static final List<String> COLUMNS =
      List.of(
          "patient", "issuer", "purpose", "given", "until", "face", "form", "guardian", "of age");

  private final Practice practice;
  private final Ledger ledger;

  public Consenting(Practice practice) {
    this.practice = practice;
    this.ledger = practice.store().ledger();
  }

  /** Records one consent. */
  public Outcome<ConsentRow> add(ConsentWords words, String by) {
    return read(words, by).map(this::record);
  }

  private ConsentRow record(ConsentRow consent) {
    return ledger.together(
        () -> {
          ledger.consents().add(consent);
          ledger
              .events()
              .add(
                  consent.who(),
                  consent.given() ? "consent recorded" : "consent withdrawn",
                  null,
                  "");
          return consent;
        });
  }

  /**
   * Records a list of consents: all of them, or none if one row can't be read.
   *
   * @return how many there were
   */
  public Outcome<Integer> addAll(Path list, String by) throws IOException {
    String name = String.valueOf(list.getFileName());
    Outcome<List<NamedRows.Row>> rows =
        NamedRows.read(
            Files.readAllBytes(list), name, COLUMNS.get(0), COLUMNS.subList(1, COLUMNS.size()));
    if (rows instanceof Refused<List<NamedRows.Row>> refused) {
      return refused.as();
    }
    if (rows.orThrow().isEmpty()) {
      return Outcome.refused(
          name + " has no row",
          "write a header with the columns " + String.join(", ", COLUMNS) + ", and a row for each");
    }
    List<ConsentRow> consents = new ArrayList<>();
    for (NamedRows.Row row : rows.orThrow()) {
      Outcome<ConsentRow> read = read(words(row), by);
      if (read instanceof Refused<ConsentRow> refused) {
        return Outcome.refused(
            name + ", row " + row.number() + ": " + refused.reason(),
            refused.advice() + "; no row was taken");
      }
      consents.add(read.orThrow());
    }
    ledger.together(
        () -> {
          consents.forEach(this::record);
          return consents;
        });
    return Outcome.done(consents.size());
  }

  private static ConsentWords words(NamedRows.Row row) {
    List<String> c = COLUMNS.stream().map(row::cell).toList();
    return new ConsentWords(
        c.get(0), c.get(1), c.get(2), c.get(3), c.get(4), c.get(5), c.get(6), c.get(7), c.get(8));
  }

  private Outcome<ConsentRow> read(ConsentWords words, String by) {
    Outcome<Purpose> purpose = Purposes.find(words.purpose());
    if (purpose instanceof Refused<Purpose> refused) {
      return refused.as();
    }
    Outcome<PatientRow> patient = patient(words.patient(), words.issuer());
    if (patient instanceof Refused<PatientRow> refused) {
      return refused.as();
    }
    Outcome<LocalDate> given = day(words.given(), "was given");
    if (given instanceof Refused<LocalDate> refused) {
      return refused.as();
    }
    Outcome<Optional<LocalDate>> until =
        words.until().isBlank()
            ? Outcome.done(Optional.empty())
            : day(words.until(), "ends").map(Optional::of);
    if (until instanceof Refused<Optional<LocalDate>> refused) {
      return refused.as();
    }
    if (words.form().isBlank()) {
      return Outcome.refused(
          "the form that was signed is not named",
          "say its version, such as \"form 3 of 2025\"; your local law says what it has to say");
    }
    if (!List.of("yes", "no", "").contains(words.face())) {
      return Outcome.refused("face says \"" + words.face() + "\"", "say yes or no");
    }
    Optional<ConsentRow> before =
        ledger
            .consents()
            .latest(patient.orThrow().issuer(), patient.orThrow().id(), purpose.orThrow().key());
    if (before.isPresent()
        && !before.get().given()
        && !given.orThrow().isAfter(before.get().on())) {
      return Outcome.refused(
          "the patient took this consent back on "
              + before.get().on()
              + ", and it was given no later than that",
          "ask the patient again, and record the day on which they agree again");
    }
    if (words.guardian().isBlank() && isMinor(patient.orThrow(), given.orThrow())) {
      return Outcome.refused(
          "the patient was younger than "
              + practice.settings().ageOfMajority()
              + " on that day, and nobody signed for them",
          "name who signed with --guardian; if your law lets this patient sign, set"
              + " practice.age-of-majority in the settings");
    }
    return ofAge(words, patient.orThrow())
        .map(
            ofAge ->
                new ConsentRow(
                    patient.orThrow().issuer(),
                    patient.orThrow().id(),
                    purpose.orThrow().key(),
                    true,
                    given.orThrow(),
                    until.orThrow().orElse(null),
                    words.face().equals("yes"),
                    words.form().strip(),
                    words.guardian().strip(),
                    ofAge.orElse(null),
                    by,
                    practice.clock().instant()));
  }

  private boolean isMinor(PatientRow patient, LocalDate day) {
    String born = patient.birthDate();
    return born != null
        && LocalDate.parse(born).plusYears(practice.settings().ageOfMajority()).isAfter(day);
  }

  /** From when on a patient for whom somebody signed has to be asked again. */
  private static Outcome<Optional<LocalDate>> ofAge(ConsentWords words, PatientRow patient) {
    if (words.guardian().isBlank()) {
      return Outcome.done(Optional.empty());
    }
    if (!words.ofAge().matches("\\d{1,2}")) {
      return Outcome.refused(
          "a guardian signed, and the age from which the patient is asked is not said",
          "say at how many years people are of age by your local law");
    }
    String born = patient.birthDate();
    if (born == null) {
      return Outcome.refused(
          "a guardian signed, and the patient's birth date is not known",
          "put the birth date into the visit list, so that the patient is asked when of age");
    }
    return Outcome.done(
        Optional.of(LocalDate.parse(born).plusYears(Integer.parseInt(words.ofAge()))));
  }

  private Outcome<PatientRow> patient(String number, String issuer) {
    String asked = number.strip();
    List<PatientRow> found =
        ledger.visits().patients().stream()
            .filter(patient -> patient.id().equals(asked))
            .filter(patient -> issuer.isBlank() || patient.issuer().equals(issuer.strip()))
            .toList();
    if (found.isEmpty()) {
      return Outcome.refused(
          "no patient with this number is on record",
          "check the number; a patient is on record once a photograph or a visit is");
    }
    return found.size() > 1
        ? Outcome.refused(
            "several issuers have given this number", "say whose number it is with --issuer")
        : Outcome.done(found.get(0));
  }

  private static Outcome<LocalDate> day(String text, String what) {
    try {
      return Outcome.done(LocalDate.parse(text.strip()));
    } catch (DateTimeException unreadable) {
      return Outcome.refused(
          "the day on which the consent " + what + " reads \"" + text.strip() + "\"",
          "write it as YYYY-MM-DD");
    }
  }

  /** Every consent and withdrawal, the first one first. */
  public List<ConsentRow> all() {
    return ledger.consents().all();
  }

  /**
   * Takes a consent back: no new copies are made.
   *
   * @return the copies that were made before and are out of the house
   */
  public Outcome<List<ReleaseRow>> withdraw(
      String number, String issuer, String purposeKey, String on, String by) {
    Outcome<Purpose> purpose = Purposes.find(purposeKey);
    if (purpose instanceof Refused<Purpose> refused) {
      return refused.as();
    }
    Outcome<PatientRow> patient = patient(number, issuer);
    if (!(patient instanceof Done<PatientRow> known)) {
      return ((Refused<PatientRow>) patient).as();
    }
    String key = purpose.orThrow().key();
    return day(on, "was withdrawn")
        .map(
            day -> {
              record(withdrawal(known.value(), key, day, by));
              return ledger.releases().of(known.value().issuer(), known.value().id()).stream()
                  .filter(release -> release.purpose().equals(key))
                  .toList();
            });
  }

  private ConsentRow withdrawal(PatientRow patient, String purpose, LocalDate day, String by) {
    return new ConsentRow(
        patient.issuer(),
        patient.id(),
        purpose,
        false,
        day,
        null,
        false,
        "",
        "",
        null,
        by,
        practice.clock().instant());
  }
}
