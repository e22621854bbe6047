package org.vestibule.store.ledger;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteConfig;
import org.vestibule.store.ledger.LedgerUnusableException.Trouble;
import org.vestibule.store.steps.WriteStep;
import org.vestibule.store.steps.WriteSteps;

/** One connection to the ledger's file, its transactions and plain statements. */
final class Database implements AutoCloseable {

  private static final int BUSY_MILLIS = 15_000;

  private final Connection connection;
  private final String practice;
  private final Clock clock;
  private final WriteSteps steps;
  private final ReentrantLock lock = new ReentrantLock();
  private boolean inTransaction;
  private @Nullable Seals seals;

  /** Reads rows one by one. */
  @FunctionalInterface
  interface Rows {
    void read(ResultSet rows) throws SQLException;
  }

  /** Asks the connection itself. */
  @FunctionalInterface
  interface Asking<T> {
    T ask(Connection connection) throws SQLException;
  }

  private Database(Connection connection, String practice, Clock clock, WriteSteps steps) {
    this.connection = connection;
    this.practice = practice;
    this.clock = clock;
    this.steps = steps;
  }

  static Database open(Path file, String practice, Clock clock, WriteSteps steps) {
    return open(file, practice, clock, steps, BUSY_MILLIS);
  }

  /**
   * Opens the file or makes it.
   *
   * @param busyMillis how long to wait for another process that is writing
   */
  static Database open(Path file, String practice, Clock clock, WriteSteps steps, int busyMillis) {
    SQLiteConfig config = new SQLiteConfig();
    config.setJournalMode(SQLiteConfig.JournalMode.WAL);
    config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
    config.setBusyTimeout(busyMillis);
    config.enforceForeignKeys(true);
    config.setTempStore(SQLiteConfig.TempStore.MEMORY);
    // Without it REPLACE would delete history past the triggers that forbid it.
    config.enableRecursiveTriggers(true);
    try {
      Connection connection = config.createConnection("jdbc:sqlite:" + file);
      return new Database(connection, practice, clock, steps);
    } catch (SQLException e) {
      throw failed(e);
    }
  }

  String practice() {
    return practice;
  }

  Instant now() {
    return clock.instant();
  }

  /** Runs the work in one immediate transaction; inside another one, as a part of that. */
  <T> T together(Supplier<T> work) {
    lock.lock();
    try {
      if (inTransaction) {
        return work.get();
      }
      return inNewTransaction(work);
    } finally {
      lock.unlock();
    }
  }

  /** From now on every transaction seals what it writes. Outside of a transaction. */
  void sealing() {
    seals = new Seals(this);
  }

  private <T> T inNewTransaction(Supplier<T> work) {
    Seals sealing = seals;
    if (sealing != null) {
      sealing.watch();
    }
    execute("BEGIN IMMEDIATE");
    inTransaction = true;
    T result;
    try {
      result = work.get();
      if (sealing != null) {
        sealing.seal();
      }
      reached(WriteStep.LEDGER_COMMITTING);
      execute("COMMIT");
    } catch (RuntimeException | Error e) {
      rollBack(e);
      throw e;
    } finally {
      inTransaction = false;
    }
    reached(WriteStep.LEDGER_COMMITTED);
    return result;
  }

  /** SQLite itself has rolled back already in some cases, such as a full disk. */
  private void rollBack(Throwable reason) {
    try {
      execute("ROLLBACK");
    } catch (LedgerException | LedgerUnusableException e) {
      reason.addSuppressed(e);
    }
  }

  private void reached(WriteStep step) {
    try {
      steps.reached(step);
    } catch (IOException e) {
      throw new LedgerUnusableException("the ledger could not be written", e, Troubles.of(e));
    }
  }

  void execute(String sql) {
    try (Statement statement = connection.createStatement()) {
      statement.execute(sql);
    } catch (SQLException e) {
      throw failed(e);
    }
  }

  /**
   * Runs a statement with these values and says how many rows it touched; in a transaction of its
   * own unless there is one.
   */
  int update(String sql, @Nullable Object... values) {
    return together(() -> run(sql, values));
  }

  /** The same for a statement that no transaction may hold. */
  int run(String sql, @Nullable Object... values) {
    lock.lock();
    try (PreparedStatement statement = prepared(sql, values)) {
      return statement.executeUpdate();
    } catch (SQLException e) {
      throw failed(e);
    } finally {
      lock.unlock();
    }
  }

  <T> List<T> list(String sql, Row.Reader<T> reader, @Nullable Object... values) {
    lock.lock();
    try (PreparedStatement statement = prepared(sql, values);
        ResultSet result = statement.executeQuery()) {
      List<T> rows = new ArrayList<>();
      Row row = new Row(result);
      while (result.next()) {
        rows.add(reader.read(row));
      }
      return rows;
    } catch (SQLException e) {
      throw failed(e);
    } finally {
      lock.unlock();
    }
  }

  /** Reads a result of any length without keeping its rows. */
  void each(String sql, Rows reader, @Nullable Object... values) {
    lock.lock();
    try (PreparedStatement statement = prepared(sql, values);
        ResultSet result = statement.executeQuery()) {
      reader.read(result);
    } catch (SQLException e) {
      throw failed(e);
    } finally {
      lock.unlock();
    }
  }

  /** Asks the connection something that is no single statement. */
  <T> T with(Asking<T> asking) {
    lock.lock();
    try {
      return asking.ask(connection);
    } catch (SQLException e) {
      throw failed(e);
    } finally {
      lock.unlock();
    }
  }

  <T> Optional<T> one(String sql, Row.Reader<T> reader, @Nullable Object... values) {
    return list(sql, reader, values).stream().findFirst();
  }

  private PreparedStatement prepared(String sql, @Nullable Object... values) throws SQLException {
    PreparedStatement statement = connection.prepareStatement(sql);
    for (int at = 0; at < values.length; at++) {
      Object value = values[at];
      boolean plain = value == null || value instanceof Number;
      statement.setObject(at + 1, plain ? value : String.valueOf(value));
    }
    return statement;
  }

  /** A statement that the ledger's own rules refuse is a bug; the codes of the machine are not. */
  static RuntimeException failed(SQLException e) {
    Optional<Trouble> trouble = Troubles.of(e);
    if (trouble.equals(Optional.of(Trouble.HELD))) {
      return new LedgerUnusableException(
          "another program is writing the ledger and did not end in time: wait until it has ended,"
              + " then run again; nothing of this step was changed",
          e,
          Trouble.HELD);
    }
    String message = "the ledger could not be read or written: " + e.getMessage();
    return trouble
        .<RuntimeException>map(what -> new LedgerUnusableException(message, e, what))
        .orElseGet(() -> new LedgerException(message, e));
  }

  @Override
  public void close() {
    try {
      connection.close();
    } catch (SQLException e) {
      throw failed(e);
    }
  }
}
