package org.vestibule.store.ledger;

import java.util.Optional;
import org.vestibule.base.Uids;
import org.vestibule.encode.Role;

/**
 * Gives out study, series and instance identities. What was given once stays: a visit's study, a
 * series' number in its study, an object's number in its series. Only within a transaction.
 */
final class Numbering {

  private final Database database;
  private final Uids uids;

  Numbering(Database database, Uids uids) {
    this.database = database;
    this.uids = uids;
  }

  String study(Filing filing) {
    Optional<String> fixed =
        database.one(
            "SELECT study_uid FROM study WHERE practice = ? AND issuer = ? AND patient_id = ?"
                + " AND visit = ?",
            row -> row.text("study_uid"),
            database.practice(),
            filing.issuer(),
            filing.patientId(),
            filing.visitKey());
    if (fixed.isPresent()) {
      return fixed.get();
    }
    String named = filing.worklistStudyUid();
    String uid =
        named != null
            ? named
            : uids.of("study", filing.issuer(), filing.patientId(), filing.visitKey());
    database.update(
        "INSERT INTO study (practice, issuer, patient_id, visit, study_uid, at)"
            + " VALUES (?, ?, ?, ?, ?, ?)",
        database.practice(),
        filing.issuer(),
        filing.patientId(),
        filing.visitKey(),
        uid,
        database.now());
    return uid;
  }

  String series(String studyUid, Filing filing, Role role) {
    String uid = uids.of("series", studyUid, filing.device(), filing.set(), role.name());
    database.update(
        "INSERT INTO series (practice, series_uid, study_uid, number, at)"
            + " SELECT ?, ?, ?, 1 + coalesce(max(number), 0), ? FROM series"
            + " WHERE practice = ? AND study_uid = ?"
            + " ON CONFLICT (practice, series_uid) DO NOTHING",
        database.practice(),
        uid,
        studyUid,
        database.now(),
        database.practice(),
        studyUid);
    return uid;
  }

  int nextInstance(String seriesUid) {
    return next(
        "SELECT max(instance_number) AS n FROM intent WHERE practice = ? AND series_uid = ?",
        seriesUid);
  }

  int nextRevision(Filing filing) {
    return next(
        "SELECT max(revision) AS n FROM intent WHERE practice = ? AND hash = ?", filing.hash());
  }

  private int next(String sql, Object of) {
    return 1 + database.list(sql, row -> row.number("n"), database.practice(), of).get(0);
  }

  String object(Filing filing, Role role, int revision) {
    return uids.of(
        "object",
        filing.hash().hex(),
        role.name(),
        filing.decided(),
        Integer.toString(revision),
        filing.recipe());
  }
}
