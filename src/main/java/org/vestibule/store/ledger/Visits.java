package org.vestibule.store.ledger;

import java.sql.SQLException;
import java.util.List;
import java.util.Optional;

/** Patients and visits as they stand now; every earlier wording stays in the history. */
public final class Visits {

  private final Database database;

  Visits(Database database) {
    this.database = database;
  }

  /**
   * Records a patient.
   *
   * @return false if everything was known already
   */
  public boolean put(PatientRow patient, String who) {
    return database.together(
        () -> {
          if (patient(patient.issuer(), patient.id()).filter(patient::equals).isPresent()) {
            return false;
          }
          database.update(
              "INSERT INTO patient (practice, issuer, id, name, birth_date, sex, details)"
                  + " VALUES (?, ?, ?, ?, ?, ?, ?) ON CONFLICT (practice, issuer, id) DO UPDATE SET"
                  + " name = excluded.name, birth_date = excluded.birth_date, sex = excluded.sex,"
                  + " details = excluded.details",
              database.practice(),
              patient.issuer(),
              patient.id(),
              patient.name(),
              patient.birthDate(),
              patient.sex(),
              patient.details());
          database.update(
              "INSERT INTO patient_history (practice, issuer, id, name, birth_date, sex, details,"
                  + " who, at) SELECT practice, issuer, id, name, birth_date, sex, details, ?, ?"
                  + " FROM patient WHERE practice = ? AND issuer = ? AND id = ?",
              who,
              database.now(),
              database.practice(),
              patient.issuer(),
              patient.id());
          return true;
        });
  }

  /**
   * Records a visit of a patient who was recorded before.
   *
   * @return false if everything was known already
   */
  public boolean put(VisitRow visit, String who) {
    return database.together(
        () -> {
          if (visit(visit.key()).filter(visit::equals).isPresent()) {
            return false;
          }
          database.update(
              "INSERT INTO visit (practice, key, issuer, patient_id, starts, ends, zone,"
                  + " accession, referrer, dentist, details) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?,"
                  + " ?) ON CONFLICT (practice, key) DO UPDATE SET issuer = excluded.issuer,"
                  + " patient_id = excluded.patient_id, starts = excluded.starts, ends ="
                  + " excluded.ends, zone = excluded.zone, accession = excluded.accession, referrer"
                  + " = excluded.referrer, dentist = excluded.dentist, details = excluded.details",
              database.practice(),
              visit.key(),
              visit.issuer(),
              visit.patientId(),
              visit.starts(),
              visit.ends(),
              visit.zone(),
              visit.accession(),
              visit.referrer(),
              visit.dentist(),
              visit.details());
          database.update(
              "INSERT INTO visit_history (practice, key, issuer, patient_id, starts, ends, zone,"
                  + " accession, referrer, dentist, details, who, at) SELECT practice, key, issuer,"
                  + " patient_id, starts, ends, zone, accession, referrer, dentist, details, ?, ?"
                  + " FROM visit WHERE practice = ? AND key = ?",
              who,
              database.now(),
              database.practice(),
              visit.key());
          return true;
        });
  }

  public Optional<PatientRow> patient(String issuer, String id) {
    return database.one(
        "SELECT * FROM patient WHERE practice = ? AND issuer = ? AND id = ?",
        Visits::readPatient,
        database.practice(),
        issuer,
        id);
  }

  public Optional<VisitRow> visit(String key) {
    return database.one(
        "SELECT * FROM visit WHERE practice = ? AND key = ?",
        Visits::readVisit,
        database.practice(),
        key);
  }

  /** All patients, by issuer and id. */
  public List<PatientRow> patients() {
    return database.list(
        "SELECT * FROM patient WHERE practice = ? ORDER BY issuer, id",
        Visits::readPatient,
        database.practice());
  }

  /** All visits, in the order of their beginning. */
  public List<VisitRow> visits() {
    return database.list(
        "SELECT * FROM visit WHERE practice = ? ORDER BY starts, key",
        Visits::readVisit,
        database.practice());
  }

  private static PatientRow readPatient(Row row) throws SQLException {
    return new PatientRow(
        row.text("issuer"),
        row.text("id"),
        row.text("name"),
        row.textOrNull("birth_date"),
        row.textOrNull("sex"),
        row.text("details"));
  }

  private static VisitRow readVisit(Row row) throws SQLException {
    return new VisitRow(
        row.text("key"),
        row.text("issuer"),
        row.text("patient_id"),
        row.text("starts"),
        row.text("ends"),
        row.text("zone"),
        row.textOrNull("accession"),
        row.textOrNull("referrer"),
        row.textOrNull("dentist"),
        row.text("details"));
  }
}
