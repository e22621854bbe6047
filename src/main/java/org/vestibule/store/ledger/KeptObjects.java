package org.vestibule.store.ledger;

import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.vestibule.base.ContentHash;

/** The objects that are on the disk and proved. */
public final class KeptObjects {

  private static final int PAGE = 500;

  private final Database database;
  private final Photos photos;
  private final Intents intents;
  private final Decisions decisions;
  private final Corrections corrections;
  private final Changes changes;

  KeptObjects(
      Database database,
      Photos photos,
      Intents intents,
      Decisions decisions,
      Corrections corrections,
      Changes changes) {
    this.database = database;
    this.photos = photos;
    this.intents = intents;
    this.decisions = decisions;
    this.corrections = corrections;
    this.changes = changes;
  }

  /**
   * Says that all objects of a photograph's filing are on the disk, in one transaction. What was
   * kept of the photograph before is replaced by them, for the reason in the new decision.
   *
   * @param indexRecord how the index describes the photograph
   * @throws LedgerException unless these are exactly the objects intended and not yet kept
   */
  public void keep(ContentHash hash, List<KeptObject> objects, String indexRecord) {
    database.together(
        () -> {
          List<Intent> open = intents.unfinished(hash);
          requireSame(hash, open, objects);
          List<Intent> before = intents.current(hash);
          objects.forEach(object -> insert(database, object));
          if (!before.isEmpty()) {
            DecisionRow decision = decisions.find(open.get(0).decisionId()).orElseThrow();
            corrections.replaced(before.get(0), open.get(0).revision(), decision);
          }
          photos.move(hash, PhotoState.KEPT);
          changes.put(hash.hex(), indexRecord);
          return hash;
        });
  }

  private static void requireSame(ContentHash hash, List<Intent> open, List<KeptObject> objects) {
    List<String> intended = open.stream().map(Intent::sopUid).sorted().toList();
    List<String> given = objects.stream().map(KeptObject::sopUid).sorted().toList();
    if (intended.isEmpty() || !intended.equals(given)) {
      throw new LedgerException(
          "of photograph "
              + hash.brief()
              + " "
              + intended.size()
              + " objects are intended, but other or not all of them are to be kept");
    }
  }

  static void insert(Database database, KeptObject object) {
    database.update(
        "INSERT INTO kept (practice, sop_uid, file_hash, pixel_hash, size, trimmed_columns,"
            + " trimmed_rows, at) VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
        database.practice(),
        object.sopUid(),
        object.fileHash(),
        object.pixelHash(),
        object.sizeBytes(),
        object.trimmedColumns(),
        object.trimmedRows(),
        database.now());
  }

  public Optional<KeptObject> find(String sopUid) {
    return database.one(
        "SELECT * FROM kept WHERE practice = ? AND sop_uid = ?",
        KeptObjects::read,
        database.practice(),
        sopUid);
  }

  /**
   * Every object ever kept, rejected and replaced ones too, in order of their UIDs' text; read page
   * by page as they are gone through, so that a large store needs no more memory than a small one.
   */
  public Stream<KeptObject> all() {
    return Stream.iterate(after(""), page -> !page.isEmpty(), page -> after(last(page).sopUid()))
        .flatMap(List::stream);
  }

  private List<KeptObject> after(String sopUid) {
    return database.list(
        "SELECT * FROM kept WHERE practice = ? AND sop_uid > ? ORDER BY sop_uid LIMIT ?",
        KeptObjects::read,
        database.practice(),
        sopUid,
        PAGE);
  }

  private static KeptObject last(List<KeptObject> page) {
    return page.get(page.size() - 1);
  }

  /** How many objects were ever kept. */
  public int count() {
    return database
        .list(
            "SELECT count(*) AS n FROM kept WHERE practice = ?",
            row -> row.number("n"),
            database.practice())
        .get(0);
  }

  private static KeptObject read(Row row) throws SQLException {
    return new KeptObject(
        row.text("sop_uid"),
        row.hash("file_hash"),
        row.hash("pixel_hash"),
        row.large("size"),
        row.number("trimmed_columns"),
        row.number("trimmed_rows"));
  }
}
