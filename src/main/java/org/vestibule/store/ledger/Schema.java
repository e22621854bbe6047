package org.vestibule.store.ledger;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.vestibule.base.Outcome;

/** Brings a ledger to the newest layout, step by step, and refuses one that is newer. */
final class Schema {

  /** The newest layout; there is one resource {@code schema-<n>.sql} for each up to it. */
  static final int NEWEST = 8;

  private Schema() {}

  /** Says that the ledger has this program's layout and belongs to the practice. */
  static Outcome<Database> prepare(Database database) {
    int found = version(database);
    if (found > NEWEST) {
      return Outcome.refused(
          "the ledger has layout " + found + ", and this program knows layouts up to " + NEWEST,
          "use the program version that wrote it, or a newer one; nothing was changed");
    }
    if (found < NEWEST) {
      database.together(
          () -> {
            // Another process may have been faster while this one waited for the transaction.
            for (int next = version(database) + 1; next <= NEWEST; next++) {
              apply(database, next);
            }
            Seals.migrated(database);
            return NEWEST;
          });
    }
    database.sealing();
    return belongs(database);
  }

  private static int version(Database database) {
    return database.list("PRAGMA user_version", row -> row.number("user_version")).get(0);
  }

  private static void apply(Database database, int version) {
    statements(version).forEach(database::execute);
    if (version == 1) {
      database.update(
          "INSERT INTO identity (practice, created_at) VALUES (?, ?)",
          database.practice(),
          database.now());
    }
    database.update(
        "INSERT INTO event (practice, who, what, details, at) VALUES (?, ?, ?, ?, ?)",
        database.practice(),
        "vestibule",
        "ledger layout " + version,
        "",
        database.now());
    database.execute("PRAGMA user_version = " + version);
  }

  private static Outcome<Database> belongs(Database database) {
    Optional<String> other =
        database.one(
            "SELECT practice FROM identity WHERE practice <> ?",
            row -> row.text("practice"),
            database.practice());
    return other.isEmpty()
        ? Outcome.done(database)
        : Outcome.refused(
            "the ledger belongs to practice \""
                + other.get()
                + "\", but the settings say \""
                + database.practice()
                + "\"",
            "correct the practice id in the settings, or use another home folder");
  }

  /** The statements that make one layout of the one before. */
  static List<String> statements(int version) {
    String name = "schema-" + version + ".sql";
    try (InputStream in = Schema.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its resource " + name);
      }
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return Arrays.stream(text.split("\\R\\R", -1))
          .filter(statement -> !statement.isBlank() && !statement.startsWith("--"))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
