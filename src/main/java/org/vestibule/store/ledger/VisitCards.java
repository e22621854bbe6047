package org.vestibule.store.ledger;

import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** The visit cards that were drawn; nothing is ever taken out. */
public final class VisitCards {

  private final Database database;

  VisitCards(Database database) {
    this.database = database;
  }

  /** Records a card before it is drawn. */
  public void add(VisitCardRow card, String who) {
    database.update(
        "INSERT INTO visit_card (practice, token, visit, issuer, patient_id, day, who, at)"
            + " VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
        database.practice(),
        card.token(),
        card.visit(),
        card.issuer(),
        card.patientId(),
        card.day(),
        who,
        database.now());
  }

  /** The card with this token. */
  public Optional<VisitCardRow> find(String token) {
    return database.one(
        "SELECT * FROM visit_card WHERE practice = ? AND token = ?",
        VisitCards::read,
        database.practice(),
        token);
  }

  /** The cards drawn for a visit of this key, the first one first; keys may be used again. */
  public List<VisitCardRow> of(String visit) {
    return database.list(
        "SELECT * FROM visit_card WHERE practice = ? AND visit = ? ORDER BY at, token",
        VisitCards::read,
        database.practice(),
        visit);
  }

  private static VisitCardRow read(Row row) throws SQLException {
    return new VisitCardRow(
        row.text("token"),
        row.text("visit"),
        row.text("issuer"),
        row.text("patient_id"),
        LocalDate.parse(row.text("day")));
  }
}
