package org.vestibule.store.ledger;

import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;

/**
 * The numbered changes from which the index is made; the last one of each photograph counts.
 *
 * <p>Where they are read by number, the plus before the practice keeps SQLite from its index of
 * practice and id, which would have it sort all of a practice's changes for each question.
 */
public final class Changes {

  private static final int MARK_DIGITS = 32;

  private final Database database;

  Changes(Database database) {
    this.database = database;
  }

  /** Describes a photograph anew; nothing is added if the description is the same. */
  public void put(String id, String record) {
    database.together(
        () -> {
          if (latest(id).map(ChangeRow::record).filter(record::equals).isEmpty()) {
            add(id, record);
          }
          return id;
        });
  }

  /** Removes a photograph from the index, if it is there. */
  public void remove(String id) {
    database.together(
        () -> {
          if (latest(id).map(ChangeRow::record).isPresent()) {
            add(id, null);
          }
          return id;
        });
  }

  private void add(String id, @Nullable String record) {
    String before = last().map(ChangeRow::mark).orElse("");
    database.update(
        "INSERT INTO change (practice, id, record, mark, at) VALUES (?, ?, ?, ?, ?)",
        database.practice(),
        id,
        record,
        mark(before, id, record),
        database.now());
  }

  private static String mark(String before, String id, @Nullable String record) {
    String parts = before + "\0" + id + "\0" + (record == null ? "" : "+" + record);
    return ContentHash.of(parts.getBytes(StandardCharsets.UTF_8)).hex().substring(0, MARK_DIGITS);
  }

  /** The last change of all. */
  public Optional<ChangeRow> last() {
    return database.one(
        "SELECT * FROM change WHERE +practice = ? ORDER BY sequence DESC LIMIT 1",
        Changes::read,
        database.practice());
  }

  /** The last change of one photograph. */
  public Optional<ChangeRow> latest(String id) {
    return database.one(
        "SELECT * FROM change WHERE practice = ? AND id = ? ORDER BY sequence DESC LIMIT 1",
        Changes::read,
        database.practice(),
        id);
  }

  /** The change with this number. */
  public Optional<ChangeRow> at(long sequence) {
    return database.one(
        "SELECT * FROM change WHERE practice = ? AND sequence = ?",
        Changes::read,
        database.practice(),
        sequence);
  }

  /** The changes after this number, at most so many, in order. */
  public List<ChangeRow> after(long sequence, int most) {
    return database.list(
        "SELECT * FROM change WHERE +practice = ? AND sequence > ? ORDER BY sequence LIMIT ?",
        Changes::read,
        database.practice(),
        sequence,
        most);
  }

  /** The last change of each photograph, of those after this number, at most so many, in order. */
  public List<ChangeRow> standing(long sequence, int most) {
    return database.list(
        "SELECT * FROM change AS one WHERE +practice = ? AND sequence > ? AND sequence ="
            + " (SELECT max(sequence) FROM change WHERE practice = one.practice AND id = one.id)"
            + " ORDER BY sequence LIMIT ?",
        Changes::read,
        database.practice(),
        sequence,
        most);
  }

  /** The number of the first change whose mark does not follow from those before it. */
  public Optional<Long> firstBroken() {
    String mark = "";
    long sequence = 0;
    for (List<ChangeRow> page = after(0, 500); !page.isEmpty(); page = after(sequence, 500)) {
      for (ChangeRow change : page) {
        mark = mark(mark, change.id(), change.record());
        sequence = change.sequence();
        if (!mark.equals(change.mark())) {
          return Optional.of(sequence);
        }
      }
    }
    return Optional.empty();
  }

  private static ChangeRow read(Row row) throws SQLException {
    return new ChangeRow(
        row.large("sequence"), row.text("id"), row.textOrNull("record"), row.text("mark"));
  }
}
