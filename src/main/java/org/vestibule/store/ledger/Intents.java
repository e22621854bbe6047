package org.vestibule.store.ledger;

import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.vestibule.base.ContentHash;
import org.vestibule.encode.Role;

/** What is about to become an object: written down before the object is. */
public final class Intents {

  private static final String SELECT =
      "SELECT i.*, s.number AS series_number FROM intent i JOIN series s"
          + " ON s.practice = i.practice AND s.series_uid = i.series_uid";
  private static final String OPEN =
      " AND NOT EXISTS (SELECT 1 FROM kept k WHERE k.practice = i.practice AND k.sop_uid ="
          + " i.sop_uid) AND NOT EXISTS (SELECT 1 FROM abandoned a WHERE a.practice = i.practice"
          + " AND a.sop_uid = i.sop_uid)";

  private final Database database;
  private final Photos photos;
  private final WaitingList waiting;
  private final Numbering numbering;

  Intents(Database database, Photos photos, WaitingList waiting, Numbering numbering) {
    this.database = database;
    this.photos = photos;
    this.waiting = waiting;
    this.numbering = numbering;
  }

  /**
   * Gives a filing its identities and writes them down, the frame first. The same filing again gets
   * the same ones as long as it is unfinished; an unfinished other one is abandoned.
   */
  public List<Intent> begin(Filing filing, String who) {
    return database.together(
        () -> {
          photos.require(filing.hash());
          List<Intent> open = unfinished(filing.hash());
          if (!open.isEmpty() && open.stream().allMatch(intent -> same(intent, filing))) {
            return open;
          }
          return revise(open, filing, who, "another filing took its place");
        });
  }

  /**
   * Gives up the unfinished filing of a photograph and begins its next revision, whose objects have
   * other identities, in one transaction.
   */
  public List<Intent> beginAnew(Filing filing, String who, String why) {
    return database.together(() -> revise(unfinished(filing.hash()), filing, who, why));
  }

  private List<Intent> revise(List<Intent> open, Filing filing, String who, String why) {
    open.forEach(intent -> abandon(intent, who, why));
    int revision = numbering.nextRevision(filing);
    String study = numbering.study(filing);
    for (Role role : filing.roles()) {
      insert(filing, role, revision, study);
    }
    waiting.clear(filing.hash());
    photos.move(filing.hash(), PhotoState.INTENDED);
    return unfinished(filing.hash());
  }

  private static boolean same(Intent intent, Filing filing) {
    return intent.decisionId().equals(filing.decisionId())
        && intent.recipe().equals(filing.recipe())
        && filing.roles().contains(intent.role());
  }

  private void insert(Filing filing, Role role, int revision, String study) {
    String series = numbering.series(study, filing, role);
    database.update(
        "INSERT INTO intent (practice, sop_uid, hash, role, decision, revision, recipe, study_uid,"
            + " series_uid, instance_number, at) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
        database.practice(),
        numbering.object(filing, role, revision),
        filing.hash(),
        role,
        filing.decisionId(),
        revision,
        filing.recipe(),
        study,
        series,
        numbering.nextInstance(series),
        database.now());
  }

  /**
   * Gives up the unfinished filing of a photograph, for example because its picture can't be turned
   * without loss. It stands then where it stood before.
   */
  public void abandon(ContentHash hash, String who, String why) {
    database.together(
        () -> {
          List<Intent> open = unfinished(hash);
          open.forEach(intent -> abandon(intent, who, why));
          if (!open.isEmpty()) {
            boolean kept = current(hash).stream().findAny().isPresent();
            photos.move(hash, kept ? PhotoState.KEPT : PhotoState.SEEN);
          }
          return open;
        });
  }

  private void abandon(Intent intent, String who, String why) {
    database.update(
        "INSERT INTO abandoned (practice, sop_uid, who, why, at) VALUES (?, ?, ?, ?, ?)",
        database.practice(),
        intent.sopUid(),
        who,
        why,
        database.now());
  }

  /** Every intent without its object, in the order in which they were written down. */
  public List<Intent> unfinished() {
    return list(" WHERE i.practice = ?" + OPEN);
  }

  /** The intents of a photograph without their objects. */
  public List<Intent> unfinished(ContentHash hash) {
    return list(" WHERE i.practice = ? AND i.hash = ?" + OPEN, hash);
  }

  /** All intents of a photograph, finished or not, by revision. */
  public List<Intent> of(ContentHash hash) {
    return list(" WHERE i.practice = ? AND i.hash = ?", hash);
  }

  /**
   * The intents whose objects are kept and neither rejected nor replaced; empty if there are none.
   */
  public List<Intent> current(ContentHash hash) {
    return list(
        " JOIN kept k ON k.practice = i.practice AND k.sop_uid = i.sop_uid"
            + " WHERE i.practice = ? AND i.hash = ? AND NOT EXISTS (SELECT 1 FROM correction c"
            + " WHERE c.practice = i.practice AND c.hash = i.hash AND c.revision = i.revision)",
        hash);
  }

  public Optional<Intent> find(String sopUid) {
    return list(" WHERE i.practice = ? AND i.sop_uid = ?", sopUid).stream().findFirst();
  }

  /** Why this object's filing was given up; empty if it was not. */
  public Optional<String> whyAbandoned(String sopUid) {
    return database.one(
        "SELECT why FROM abandoned WHERE practice = ? AND sop_uid = ?",
        row -> row.text("why"),
        database.practice(),
        sopUid);
  }

  private List<Intent> list(String where, Object... more) {
    Object[] values = new Object[more.length + 1];
    values[0] = database.practice();
    System.arraycopy(more, 0, values, 1, more.length);
    return database.list(
        SELECT + where + " ORDER BY i.at, i.hash, i.revision, i.role DESC", Intents::read, values);
  }

  private static Intent read(Row row) throws SQLException {
    return new Intent(
        row.hash("hash"),
        Role.valueOf(row.text("role")),
        row.text("decision"),
        row.number("revision"),
        row.text("recipe"),
        row.text("study_uid"),
        row.text("series_uid"),
        row.text("sop_uid"),
        row.number("series_number"),
        row.number("instance_number"),
        row.time("at"));
  }
}
