package org.vestibule.store.ledger;

import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.vestibule.base.ContentHash;

/** Copies that left the house: who asked, for whom, why, which, when, with what hash. */
public final class Releases {

  private final Database database;

  Releases(Database database) {
    this.database = database;
  }

  /** Records a release with all its copies, in one transaction. */
  public void add(ReleaseRow release) {
    database.together(
        () -> {
          insert(release);
          release.items().forEach(item -> insert(release.id(), item));
          release.said().forEach(said -> insert(release.id(), said));
          return release;
        });
  }

  private void insert(ReleaseRow release) {
    database.update(
        "INSERT INTO release (practice, id, purpose, recipient, why, asked_by, who, made_on,"
            + " request, manifest_hash, at) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
        database.practice(),
        release.id(),
        release.purpose(),
        release.recipient(),
        release.why(),
        release.askedBy(),
        release.who(),
        release.madeOn(),
        release.request(),
        release.manifestHash(),
        database.now());
  }

  private void insert(String release, ReleaseRow.Item item) {
    database.update(
        "INSERT INTO release_item (practice, release, sop_uid, hash, issuer, patient_id, pseudonym,"
            + " copy_uid, name) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
        database.practice(),
        release,
        item.sopUid(),
        item.hash(),
        item.issuer(),
        item.patientId(),
        item.pseudonym(),
        item.copyUid(),
        item.name());
  }

  private void insert(String release, ReleaseRow.Said said) {
    database.update(
        "INSERT INTO release_attestation (practice, release, sop_uid, option, person, said_on)"
            + " VALUES (?, ?, ?, ?, ?, ?)",
        database.practice(),
        release,
        said.sopUid(),
        said.option(),
        said.person(),
        said.on());
  }

  /** Takes a release back: it stays on record, and is not made again. */
  public void withdraw(String id, String who, String why) {
    database.update(
        "INSERT INTO release_withdrawal (practice, release, who, why, at) VALUES (?, ?, ?, ?, ?)",
        database.practice(),
        id,
        who,
        why,
        database.now());
  }

  public Optional<ReleaseRow> find(String id) {
    return database.one(
        "SELECT * FROM release WHERE practice = ? AND id = ?", this::read, database.practice(), id);
  }

  /** All releases, the first one first. */
  public List<ReleaseRow> all() {
    return database.list(
        "SELECT * FROM release WHERE practice = ? ORDER BY at, id",
        this::read,
        database.practice());
  }

  /** The releases that hold copies of a patient's photographs, the first one first. */
  public List<ReleaseRow> of(String issuer, String patientId) {
    return database.list(
        "SELECT * FROM release WHERE practice = ? AND id IN (SELECT release FROM release_item WHERE"
            + " practice = release.practice AND issuer = ? AND patient_id = ?) ORDER BY at, id",
        this::read,
        database.practice(),
        issuer,
        patientId);
  }

  /** The releases that hold a copy of any object of a photograph, the first one first. */
  public List<ReleaseRow> of(ContentHash photo) {
    return database.list(
        "SELECT * FROM release WHERE practice = ? AND id IN (SELECT release FROM release_item r"
            + " JOIN intent i ON i.practice = r.practice AND i.sop_uid = r.sop_uid"
            + " WHERE r.practice = release.practice AND i.hash = ?) ORDER BY at, id",
        this::read,
        database.practice(),
        photo);
  }

  private ReleaseRow read(Row row) throws SQLException {
    String id = row.text("id");
    return new ReleaseRow(
        id,
        row.text("purpose"),
        row.text("recipient"),
        row.text("why"),
        row.text("asked_by"),
        row.text("who"),
        LocalDate.parse(row.text("made_on")),
        row.text("request"),
        row.text("manifest_hash"),
        items(id),
        said(id),
        withdrawn(id).orElse(null));
  }

  private List<ReleaseRow.Item> items(String id) {
    return database.list(
        "SELECT * FROM release_item WHERE practice = ? AND release = ? ORDER BY name",
        row ->
            new ReleaseRow.Item(
                row.text("sop_uid"),
                row.text("hash"),
                row.text("issuer"),
                row.text("patient_id"),
                row.text("pseudonym"),
                row.text("copy_uid"),
                row.text("name")),
        database.practice(),
        id);
  }

  private List<ReleaseRow.Said> said(String id) {
    return database.list(
        "SELECT * FROM release_attestation WHERE practice = ? AND release = ?"
            + " ORDER BY sop_uid, option",
        row ->
            new ReleaseRow.Said(
                row.text("sop_uid"),
                row.text("option"),
                row.text("person"),
                LocalDate.parse(row.text("said_on"))),
        database.practice(),
        id);
  }

  private Optional<ReleaseRow.Withdrawn> withdrawn(String id) {
    return database.one(
        "SELECT * FROM release_withdrawal WHERE practice = ? AND release = ?",
        row -> new ReleaseRow.Withdrawn(row.text("who"), row.text("why")),
        database.practice(),
        id);
  }
}
