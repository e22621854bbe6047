package org.vestibule.store.ledger;

import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What patients agreed to, purpose by purpose; nothing is ever taken out. */
public final class Consents {

  private final Database database;

  Consents(Database database) {
    this.database = database;
  }

  /** Records what a patient who is known here agreed to or took back; its time is now. */
  public void add(ConsentRow consent) {
    database.update(
        "INSERT INTO consent (practice, issuer, patient_id, purpose, kind, given_on, expires, face,"
            + " form, guardian, of_age_on, who, at) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
        database.practice(),
        consent.issuer(),
        consent.patientId(),
        consent.purpose(),
        consent.given() ? "GIVEN" : "WITHDRAWN",
        consent.on(),
        consent.expires(),
        consent.face() ? 1 : 0,
        consent.form(),
        consent.guardian(),
        consent.ofAgeOn(),
        consent.who(),
        database.now());
  }

  /** What holds for a patient and a purpose: the row that was added last. */
  public Optional<ConsentRow> latest(String issuer, String patientId, String purpose) {
    return database.one(
        "SELECT * FROM consent WHERE practice = ? AND issuer = ? AND patient_id = ? AND purpose = ?"
            + " ORDER BY number DESC LIMIT 1",
        Consents::read,
        database.practice(),
        issuer,
        patientId,
        purpose);
  }

  /** Every row, in the order in which they were added. */
  public List<ConsentRow> all() {
    return database.list(
        "SELECT * FROM consent WHERE practice = ? ORDER BY number",
        Consents::read,
        database.practice());
  }

  private static ConsentRow read(Row row) throws SQLException {
    return new ConsentRow(
        row.text("issuer"),
        row.text("patient_id"),
        row.text("purpose"),
        row.text("kind").equals("GIVEN"),
        LocalDate.parse(row.text("given_on")),
        day(row.textOrNull("expires")),
        row.number("face") == 1,
        row.text("form"),
        row.text("guardian"),
        day(row.textOrNull("of_age_on")),
        row.text("who"),
        row.time("at"));
  }

  private static @Nullable LocalDate day(@Nullable String text) {
    return text == null ? null : LocalDate.parse(text);
  }
}
