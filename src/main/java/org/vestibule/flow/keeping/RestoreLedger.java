package org.vestibule.flow.keeping;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.base.Synced;
import org.vestibule.flow.Settings;
import org.vestibule.store.RunLock;
import org.vestibule.store.Store;

/**
 * Puts a snapshot's ledger in the place of a damaged one. SQLite's own files beside the ledger
 * belong to the damaged one and go with it: beside another ledger they would damage that.
 */
public final class RestoreLedger {

  private RestoreLedger() {}

  /** Sets the ledger aside, brings the snapshot's back, makes the index and re-reads everything. */
  @SuppressWarnings("try") // the lock is held, not used
  public static Outcome<Restored> run(
      RestoreSource source, Path home, Settings settings, Clock clock) throws IOException {
    Outcome<RunLock> lock = Store.lockAt(home, "restore", clock);
    if (!(lock instanceof Done<RunLock> held)) {
      return ((Refused<RunLock>) lock).as();
    }
    try (RunLock holding = held.value()) {
      Path aside = SetAside.folder(home, clock);
      for (String name : List.of("ledger.sqlite-wal", "ledger.sqlite-shm", Snapshots.LEDGER)) {
        if (Files.exists(home.resolve(name))) {
          Files.createDirectories(aside);
          SafeCopy.rename(home.resolve(name), aside.resolve(name));
        }
      }
      Synced.folder(home);
      SafeCopy.file(source.ledger(), home.resolve(Snapshots.LEDGER));
      String note =
          "What happened after that moment is not in this ledger. The ledger that was there before"
              + " lies in "
              + SetAside.FOLDER
              + "/"
              + aside.getFileName()
              + ".";
      return Restore.checked(
          home, settings, clock, new Restored(source.name(), 0, List.of(note), List.of()));
    }
  }
}
