package org.vestibule.store.ledger;

import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Links behind which copies are shown, and who came. */
public final class Shares {

  private static final String ALL = "SELECT * FROM share WHERE practice = ?";

  private final Database database;

  Shares(Database database) {
    this.database = database;
  }

  /**
   * Records a link with all that it shows.
   *
   * @param secret the hash of the second secret; empty without one
   */
  public ShareRow add(
      String mark,
      String release,
      String secret,
      String who,
      Instant endsAt,
      List<ShareRow.Photo> photos) {
    return database.together(
        () -> {
          database.update(
              "INSERT INTO share (practice, mark, release, secret, who, at, ends_at)"
                  + " VALUES (?, ?, ?, ?, ?, ?, ?)",
              database.practice(),
              mark,
              release,
              secret,
              who,
              database.now(),
              endsAt);
          int number = find(mark).orElseThrow().number();
          photos.forEach(photo -> insert(number, photo));
          return find(mark).orElseThrow();
        });
  }

  private void insert(int share, ShareRow.Photo photo) {
    database.update(
        "INSERT INTO share_photo (practice, share, name, who, taken, view, teeth, row_runs,"
            + " column_runs, file_hash) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
        database.practice(),
        share,
        photo.name(),
        photo.who(),
        photo.taken(),
        photo.view(),
        photo.teeth(),
        photo.rowRuns(),
        photo.columnRuns(),
        photo.fileHash());
  }

  public Optional<ShareRow> find(String mark) {
    return database.one(ALL + " AND mark = ?", this::read, database.practice(), mark);
  }

  public Optional<ShareRow> find(int number) {
    return database.one(ALL + " AND number = ?", this::read, database.practice(), number);
  }

  /** All links, the first one first. */
  public List<ShareRow> all() {
    return database.list(ALL + " ORDER BY number", this::read, database.practice());
  }

  /** Ends one; false if it was ended before. */
  public boolean end(int number, String who, String why) {
    return database.update(
            "INSERT OR IGNORE INTO share_end (practice, share, who, why, at)"
                + " VALUES (?, ?, ?, ?, ?)",
            database.practice(),
            number,
            who,
            why,
            database.now())
        == 1;
  }

  /** Records that somebody came. */
  public void came(int number, boolean opened, String client) {
    database.update(
        "INSERT INTO share_opening (practice, share, what, client, at) VALUES (?, ?, ?, ?, ?)",
        database.practice(),
        number,
        opened ? "OPENED" : "WRONG SECRET",
        client,
        database.now());
  }

  /** Who came, the first one first. */
  public List<ShareRow.Opening> openings(int number) {
    return database.list(
        "SELECT * FROM share_opening WHERE practice = ? AND share = ? ORDER BY number",
        row ->
            new ShareRow.Opening(
                row.text("what").equals("OPENED"), row.text("client"), row.time("at")),
        database.practice(),
        number);
  }

  private ShareRow read(Row row) throws SQLException {
    int number = row.number("number");
    return new ShareRow(
        number,
        row.text("mark"),
        row.text("release"),
        row.text("secret"),
        row.text("who"),
        row.time("at"),
        row.time("ends_at"),
        photos(number),
        ended(number).orElse(null));
  }

  private List<ShareRow.Photo> photos(int share) {
    return database.list(
        "SELECT * FROM share_photo WHERE practice = ? AND share = ? ORDER BY name",
        row ->
            new ShareRow.Photo(
                row.text("name"),
                row.text("who"),
                row.text("taken"),
                row.text("view"),
                row.text("teeth"),
                row.text("row_runs"),
                row.text("column_runs"),
                row.text("file_hash")),
        database.practice(),
        share);
  }

  private Optional<ShareRow.End> ended(int share) {
    return database.one(
        "SELECT * FROM share_end WHERE practice = ? AND share = ?",
        row -> new ShareRow.End(row.text("who"), row.text("why"), row.time("at")),
        database.practice(),
        share);
  }
}
