package org.vestibule.flow.keeping;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.base.Synced;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Settings;
import org.vestibule.store.Finding;
import org.vestibule.store.RunLock;
import org.vestibule.store.SecretFile;
import org.vestibule.store.ledger.LedgerCopy;

/**
 * Copies a practice's record to another disk while others go on working: the ledger of one moment
 * first, then every object which that ledger knows, then what phones have sent by half, copies
 * behind links, and audit messages. Objects are written before the ledger says "kept" and never
 * changed, so the copies fit together.
 */
public final class Backup {

  private final Practice practice;
  private final BackupRequest request;
  private final Snapshots snapshots;

  private Backup(Practice practice, BackupRequest request) {
    this.practice = practice;
    this.request = request;
    this.snapshots = new Snapshots(request.to());
  }

  /** Makes a backup; objects that could not be copied stand in the report. */
  @SuppressWarnings("try") // the lock is held, not used
  public static Outcome<BackupReport> run(Practice practice, BackupRequest request)
      throws IOException {
    Outcome<Path> places = BackupPlaces.require(practice, request.to(), request.secretTo());
    if (places instanceof Refused<Path> refused) {
      return refused.as();
    }
    Outcome<RunLock> lock = practice.store().lockBackup();
    if (!(lock instanceof Done<RunLock> held)) {
      return ((Refused<RunLock>) lock).as();
    }
    try (RunLock holding = held.value()) {
      return new Backup(practice, request).locked();
    }
  }

  private Outcome<BackupReport> locked() throws IOException {
    Outcome<Practice> sound = LedgerSoundness.require(practice);
    if (sound instanceof Refused<Practice> refused) {
      return refused.as();
    }
    Outcome<Boolean> secret = secret(request.secretTo());
    if (secret instanceof Refused<Boolean> refused) {
      return refused.as();
    }
    BackupText.clearInterrupted(request.to());
    if (BackupText.mark(request.to()).isEmpty()) {
      page("none is finished yet", List.of());
    }
    snapshots.clearInterrupted();
    Path part = snapshots.begin(practice.clock().instant());
    try {
      return copies(part);
    } finally {
      Snapshots.remove(part);
    }
  }

  private Outcome<Boolean> secret(@Nullable Path to) throws IOException {
    return to == null
        ? Outcome.done(false)
        : SecretFile.copy(practice.home().resolve(SecretFile.NAME), to.resolve(SecretFile.NAME));
  }

  private Outcome<BackupReport> copies(Path part) throws IOException {
    Path ledger = part.resolve(Snapshots.LEDGER);
    practice.store().ledger().copyTo(ledger);
    Synced.file(ledger);
    if (!LedgerCopy.faults(ledger).isEmpty()) {
      return Outcome.refused(
          Outcome.Kind.DAMAGE,
          "the copy of the ledger is damaged as soon as it is written",
          "don't use that disk: check it, and make the backup on another one; older snapshots were"
              + " left as they are");
    }
    lists(part);
    ObjectCopies copies =
        new ObjectCopies(practice.store().objects(), request.to(), request.reread());
    copies.clearInterrupted();
    List<LedgerCopy.Kept> kept = LedgerCopy.kept(ledger);
    for (LedgerCopy.Kept object : kept) {
      copies.copy(object);
    }
    copies.finish();
    FolderCopies folders = new FolderCopies(practice.home(), request.to(), request.reread());
    folders.copy();
    List<Finding> findings = new ArrayList<>(copies.findings());
    findings.addAll(folders.findings());
    String name = snapshots.finish(part);
    List<String> removed = snapshots.prune(request.keep());
    page(name, kept);
    return Outcome.done(
        new BackupReport(
            name,
            kept.size(),
            copies.copied(),
            copies.mended(),
            removed,
            request.secretTo() != null,
            findings));
  }

  private void lists(Path part) throws IOException {
    Settings settings = practice.settings();
    copy(practice.home().resolve(Snapshots.SETTINGS), part.resolve(Snapshots.SETTINGS));
    copy(settings.visits(), part.resolve(Snapshots.VISITS));
    copy(settings.views(), part.resolve(Snapshots.VIEWS));
  }

  private static void copy(Path from, Path to) throws IOException {
    if (Files.isRegularFile(from)) {
      SafeCopy.write(to, Files.readAllBytes(from));
    }
  }

  private void page(String newest, List<LedgerCopy.Kept> kept) throws IOException {
    String mark = SecretFile.mark(practice.home().resolve(SecretFile.NAME)).orThrow();
    Instant finished = practice.clock().instant();
    SafeCopy.write(
        request.to().resolve(BackupText.NAME),
        BackupText.of(
            request.program(),
            practice.settings().practiceId(),
            mark,
            finished,
            newest,
            snapshots.names().size(),
            kept.size(),
            kept.stream().mapToLong(LedgerCopy.Kept::sizeBytes).sum()));
    Synced.folder(request.to());
  }
}
