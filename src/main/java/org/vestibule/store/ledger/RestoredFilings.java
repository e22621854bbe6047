package org.vestibule.store.ledger;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Uids;
import org.vestibule.encode.ObjectIdentity;
import org.vestibule.encode.Role;

/** Enters filings again whose objects are there and whose rows are lost. */
public final class RestoredFilings {

  /** The recipe of an object that was not made, but read. */
  public static final String RECIPE = "read from the object";

  /** One object of a filing. */
  public record Part(Role role, ObjectIdentity identity, KeptObject kept) {}

  /**
   * What is entered of a photograph; patient, visit and photograph are known to the ledger.
   *
   * @param objects the frame first
   * @param indexRecord how the index describes the photograph
   */
  public record Entry(
      ContentHash hash,
      String decisionId,
      String issuer,
      String patientId,
      String visitKey,
      List<Part> objects,
      String indexRecord) {

    public Entry {
      objects = List.copyOf(objects);
    }
  }

  private final Database database;
  private final Photos photos;
  private final Changes changes;
  private final Uids uids;

  RestoredFilings(Database database, Photos photos, Changes changes, Uids uids) {
    this.database = database;
    this.photos = photos;
    this.changes = changes;
    this.uids = uids;
  }

  /** True if this practice's secret gives an object's series this identity. */
  public boolean isOurs(ObjectIdentity object, String device, String set, Role role) {
    return uids.of("series", object.studyInstanceUid(), device, set, role.name())
        .equals(object.seriesInstanceUid());
  }

  /** True if this practice's secret gives a visit this study. */
  public boolean isOurs(String studyUid, String issuer, String patientId, String visitKey) {
    return uids.of("study", issuer, patientId, visitKey).equals(studyUid);
  }

  /** Says that nothing in the ledger has the place of these objects. */
  public Outcome<Entry> fits(Entry entry) {
    for (Part part : entry.objects()) {
      ObjectIdentity one = part.identity();
      Optional<String> taken =
          taken(
                  "SELECT 1 AS n FROM intent WHERE practice = ? AND series_uid = ?"
                      + " AND instance_number = ?",
                  "its number in its series was given to another photograph",
                  one.seriesInstanceUid(),
                  one.instanceNumber())
              .or(
                  () ->
                      taken(
                          "SELECT 1 AS n FROM series WHERE practice = ? AND study_uid = ?"
                              + " AND number = ? AND series_uid <> ?",
                          "the number of its series was given to another one",
                          one.studyInstanceUid(),
                          one.seriesNumber(),
                          one.seriesInstanceUid()))
              .or(
                  () ->
                      taken(
                          "SELECT 1 AS n FROM study WHERE practice = ? AND issuer = ? AND"
                              + " patient_id = ? AND visit = ? AND study_uid <> ?",
                          "its visit has another study in the ledger",
                          entry.issuer(),
                          entry.patientId(),
                          entry.visitKey(),
                          one.studyInstanceUid()));
      if (taken.isPresent()) {
        return Outcome.refused(taken.get(), "take its photograph in again");
      }
    }
    return Outcome.done(entry);
  }

  private Optional<String> taken(String sql, String words, Object... values) {
    @Nullable Object[] all = new Object[values.length + 1];
    all[0] = database.practice();
    System.arraycopy(values, 0, all, 1, values.length);
    return database.one(sql, row -> words, all);
  }

  /** Enters a filing that {@link #fits}. */
  public void enter(Entry entry) {
    database.together(
        () -> {
          for (Part part : entry.objects()) {
            study(entry, part.identity().studyInstanceUid());
            series(part.identity());
            intent(entry, part);
            KeptObjects.insert(database, part.kept());
          }
          photos.move(entry.hash(), PhotoState.KEPT);
          changes.put(entry.hash().hex(), entry.indexRecord());
          return entry;
        });
  }

  private void study(Entry entry, String studyUid) {
    database.update(
        "INSERT OR IGNORE INTO study (practice, issuer, patient_id, visit, study_uid, at)"
            + " VALUES (?, ?, ?, ?, ?, ?)",
        database.practice(),
        entry.issuer(),
        entry.patientId(),
        entry.visitKey(),
        studyUid,
        database.now());
  }

  private void series(ObjectIdentity object) {
    database.update(
        "INSERT OR IGNORE INTO series (practice, series_uid, study_uid, number, at)"
            + " VALUES (?, ?, ?, ?, ?)",
        database.practice(),
        object.seriesInstanceUid(),
        object.studyInstanceUid(),
        object.seriesNumber(),
        database.now());
  }

  private void intent(Entry entry, Part part) {
    ObjectIdentity object = part.identity();
    database.update(
        "INSERT INTO intent (practice, sop_uid, hash, role, decision, revision, recipe, study_uid,"
            + " series_uid, instance_number, at) VALUES (?, ?, ?, ?, ?, 1, ?, ?, ?, ?, ?)",
        database.practice(),
        object.sopInstanceUid(),
        entry.hash(),
        part.role(),
        entry.decisionId(),
        RECIPE,
        object.studyInstanceUid(),
        object.seriesInstanceUid(),
        object.instanceNumber(),
        database.now());
  }
}
