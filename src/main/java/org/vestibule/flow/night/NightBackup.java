package org.vestibule.flow.night;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.NightRules;
import org.vestibule.flow.Practice;
import org.vestibule.flow.keeping.Backup;
import org.vestibule.flow.keeping.BackupPlace;
import org.vestibule.flow.keeping.BackupReport;
import org.vestibule.flow.keeping.BackupRequest;
import org.vestibule.flow.night.NightReport.CopyMade;
import org.vestibule.store.ledger.LedgerUnusableException;

/** The backup at the end of a night. Whatever goes wrong with it is a result and never silent. */
final class NightBackup {

  /** How many of the newest snapshots stay, as with the command. */
  private static final int KEEP = 14;

  private static final String FULL = "the disk for the backup is full";

  private static final String BY_HAND =
      "run \"vestibule backup\" by hand to see why; until then the last backup is what there is";

  private NightBackup() {}

  static CopyMade make(Practice practice, NightRules.Copying copying) {
    try {
      Outcome<BackupReport> made =
          BackupPlace.ready(copying.to(), copying.secretTo())
              .then(ready -> copied(practice, copying));
      return made instanceof Done<BackupReport> done
          ? made(done.value())
          : failed((Refused<BackupReport>) made);
    } catch (IOException | BrokenOff failure) {
      return new CopyMade("", 0, 0, List.of(), machine(failure), BY_HAND, false);
    } catch (LedgerUnusableException failure) {
      boolean full = failure.trouble() == LedgerUnusableException.Trouble.DISK_FULL;
      String why = full ? FULL : "the ledger could not be copied";
      return new CopyMade("", 0, 0, List.of(), why, BY_HAND, false);
    }
  }

  /** Carries an exception of the machine through a step that may not throw one. */
  private static final class BrokenOff extends RuntimeException {
    private static final long serialVersionUID = 1L;

    BrokenOff(IOException cause) {
      super(cause);
    }
  }

  private static Outcome<BackupReport> copied(Practice practice, NightRules.Copying copying) {
    try {
      return Backup.run(
          practice,
          new BackupRequest(copying.to(), copying.secretTo(), false, KEEP, copying.program()));
    } catch (IOException failure) {
      throw new BrokenOff(failure);
    }
  }

  private static CopyMade made(BackupReport report) {
    return new CopyMade(
        report.snapshot(), report.objects(), report.copied(), report.findings(), "", "", false);
  }

  private static CopyMade failed(Refused<BackupReport> refused) {
    return new CopyMade(
        "",
        0,
        0,
        List.of(),
        refused.reason(),
        refused.advice(),
        refused.kind() == Outcome.Kind.DAMAGE);
  }

  /** The system's own words may name folders; what kind of failure it was is enough. */
  private static String machine(Exception failure) {
    String words = String.valueOf(failure.getMessage()).toLowerCase(Locale.ROOT);
    return words.contains("no space left")
        ? FULL
        : "the disk for the backup can't be read or written";
  }
}
