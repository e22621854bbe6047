package org.vestibule.flow.keeping;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Settings;
import org.vestibule.flow.Sharing;
import org.vestibule.flow.Verify;
import org.vestibule.store.Finding;
import org.vestibule.store.SecretFile;
import org.vestibule.store.ledger.LedgerCopy;
import org.vestibule.store.ledger.ShareRow;
import org.vestibule.store.objects.FolderObjectStore;
import org.vestibule.store.objects.Put;
import org.vestibule.store.steps.WriteSteps;

/**
 * Brings a whole practice back into a new home folder. The ledger comes last: a home without one is
 * not begun yet, so that a restore that was interrupted can simply be called again.
 */
public final class Restore {

  private final RestoreSource source;
  private final RestoreRequest request;
  private final Settings settings;
  private final Clock clock;
  private final List<String> notes = new ArrayList<>();
  private final List<Finding> findings = new ArrayList<>();
  private int copied;

  private Restore(RestoreSource source, RestoreRequest request, Settings settings, Clock clock) {
    this.source = source;
    this.request = request;
    this.settings = settings;
    this.clock = clock;
  }

  /**
   * Copies, makes the index again, and re-reads everything.
   *
   * @param settings the snapshot's, as they hold in the new home folder
   */
  public static Outcome<Restored> run(
      RestoreSource source, RestoreRequest request, Settings settings, Clock clock)
      throws IOException {
    Outcome<Path> place = place(request, settings);
    if (place instanceof Refused<Path> refused) {
      return refused.as();
    }
    Outcome<Boolean> secret =
        SecretFile.copy(request.secret(), request.home().resolve(SecretFile.NAME));
    if (secret instanceof Refused<Boolean> refused) {
      return refused.as();
    }
    return new Restore(source, request, settings, clock).copy();
  }

  private static Outcome<Path> place(RestoreRequest request, Settings settings) throws IOException {
    Path home = BackupPlaces.real(request.home());
    Path backup = BackupPlaces.real(request.from());
    if (home.startsWith(backup) || backup.startsWith(home)) {
      return Outcome.refused(
          "the new home folder and the backup would lie in one another",
          "name a new folder apart from the backup");
    }
    if (Practice.isBegun(home)) {
      return Outcome.refused(
          "there is a practice in that folder already",
          "name a new folder with --home; to bring back the ledger alone, use --ledger-only");
    }
    if (Files.isDirectory(home)
        && !BackupPlaces.isEmpty(home)
        && !Files.exists(home.resolve(SecretFile.NAME))) {
      return Outcome.refused(
          "the new home folder holds other things", "name a new or an empty folder with --home");
    }
    Path objects = BackupPlaces.real(settings.objects());
    if (!objects.startsWith(home) && Files.isDirectory(objects) && !BackupPlaces.isEmpty(objects)) {
      return Outcome.refused(
          "the settings in the backup keep the objects outside the home folder, and there are"
              + " objects in that place",
          "see docs/backup.md, \"Objects on a drive of their own\"; nothing was changed");
    }
    return Outcome.done(home);
  }

  private Outcome<Restored> copy() throws IOException {
    list(Snapshots.SETTINGS, request.home().resolve(Snapshots.SETTINGS));
    list(Snapshots.VISITS, settings.visits());
    list(Snapshots.VIEWS, settings.views());
    objects();
    FolderCopies.restore(request.from(), request.home());
    SafeCopy.file(source.ledger(), request.home().resolve(Snapshots.LEDGER));
    return checked(
        request.home(), settings, clock, new Restored(source.name(), copied, notes, findings));
  }

  private void list(String name, Path target) throws IOException {
    Path from = source.folder().resolve(name);
    if (!Files.isRegularFile(from)) {
      return;
    }
    byte[] bytes = Files.readAllBytes(from);
    if (!Files.exists(target)) {
      SafeCopy.write(target, bytes);
    } else if (!Arrays.equals(Files.readAllBytes(target), bytes)) {
      notes.add(
          target.getFileName()
              + " was there already with other content, and was left as it is; the backup's lies"
              + " in its snapshot.");
    }
  }

  /** All objects of the backup, newer ones than the snapshot too, so that nothing stays behind. */
  private void objects() throws IOException {
    Map<String, ContentHash> known = new HashMap<>();
    LedgerCopy.kept(source.ledger()).forEach(one -> known.put(one.sopUid(), one.fileHash()));
    FolderObjectStore from = new FolderObjectStore(source.objects(), WriteSteps.PASS);
    FolderObjectStore to = new FolderObjectStore(settings.objects(), WriteSteps.PASS);
    for (String uid : from.list()) {
      Optional<byte[]> bytes = readable(from, uid);
      boolean sound =
          bytes.isPresent()
              && ContentHash.of(bytes.get())
                  .equals(known.getOrDefault(uid, ContentHash.of(bytes.get())));
      if (!sound) {
        findings.add(
            new Finding(
                Finding.Kind.DAMAGE,
                "the copy of object " + uid + " in the backup is damaged, and was left out",
                "look for a sound one in another backup, and give it to repair with --from"));
      } else if (to.putIfAbsent(uid, bytes.get()).orThrow() == Put.WRITTEN) {
        copied++;
      }
    }
  }

  private static Optional<byte[]> readable(FolderObjectStore from, String uid) {
    try {
      return from.get(uid);
    } catch (IOException unreadable) {
      return Optional.empty();
    }
  }

  /** Opens what was brought back, makes its index and re-reads everything. */
  static Outcome<Restored> checked(Path home, Settings settings, Clock clock, Restored restored)
      throws IOException {
    Outcome<Practice> opened = Practice.open(home, settings, clock, false);
    if (opened instanceof Refused<Practice> refused) {
      return refused.as();
    }
    try (Practice practice = opened.orThrow()) {
      practice
          .store()
          .ledger()
          .events()
          .add("vestibule", "restored", null, "from snapshot " + restored.snapshot());
      List<String> notes = new ArrayList<>(restored.notes());
      endLinks(practice, notes);
      practice.store().reindex();
      List<Finding> all = new ArrayList<>(restored.findings());
      all.addAll(Verify.run(practice));
      return Outcome.done(new Restored(restored.snapshot(), restored.objects(), notes, all));
    }
  }

  /** A link, or the consent for it, may have been ended after the backup was made. */
  private static void endLinks(Practice practice, List<String> notes) throws IOException {
    Sharing sharing = new Sharing(practice);
    int ended = 0;
    for (ShareRow share : sharing.all()) {
      if (sharing.isOpen(share)) {
        sharing.end(share.number(), "vestibule", "brought back from a backup").orThrow();
        ended++;
      }
    }
    if (ended > 0) {
      notes.add(
          (ended == 1 ? "A link" : ended + " links")
              + " to copies that the backup holds open "
              + (ended == 1 ? "was" : "were")
              + " ended: it may be older than the end of a link or of a consent. Make those anew that"
              + " still hold, with share make.");
    }
  }
}
