package org.vestibule.flow.keeping;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.store.SecretFile;
import org.vestibule.store.ledger.LedgerCopy;
import org.vestibule.store.ledger.LedgerUnusableException;

/**
 * A snapshot that is fit to be brought back, with the secret that belongs to it.
 *
 * @param backup the backup folder
 * @param name of the snapshot
 * @param folder of the snapshot
 */
public record RestoreSource(Path backup, String name, Path folder) {

  /** Finds the snapshot in a backup folder; refused if the secret is another practice's. */
  public static Outcome<RestoreSource> find(RestoreRequest request) throws IOException {
    Optional<String> mark = BackupText.mark(request.from());
    if (mark.isEmpty()) {
      return Outcome.refused(
          "there is no backup in that folder (" + request.from().getFileName() + ")",
          "name the folder that backup wrote, the one with " + BackupText.NAME + " in it");
    }
    Outcome<String> secret = SecretFile.mark(request.secret());
    if (secret instanceof Refused<String> refused) {
      return refused.as();
    }
    if (!secret.orThrow().equals(mark.get())) {
      return Outcome.refused(
          "the secret in " + request.secret().getFileName() + " does not belong to this backup",
          "name the copy of this practice's own secret; with another one the same photographs"
              + " would get other identities and be filed twice");
    }
    return snapshot(request.from(), request.snapshot()).then(RestoreSource::sound);
  }

  private static Outcome<RestoreSource> snapshot(Path backup, @Nullable String wanted)
      throws IOException {
    Snapshots snapshots = new Snapshots(backup);
    List<String> names = snapshots.names();
    if (names.isEmpty()) {
      return Outcome.refused(
          Outcome.Kind.DAMAGE,
          "the backup holds no finished snapshot",
          "use another backup, or make one as long as the practice's own folders are there");
    }
    String name = wanted == null ? names.get(names.size() - 1) : wanted;
    return names.contains(name)
        ? Outcome.done(new RestoreSource(backup, name, snapshots.of(name)))
        : Outcome.refused(
            "the backup holds no snapshot " + name,
            "name one of its folder snapshots, such as " + names.get(names.size() - 1));
  }

  private static Outcome<RestoreSource> sound(RestoreSource source) {
    String fault;
    if (!Files.isRegularFile(source.ledger())) {
      fault = "is missing";
    } else {
      try {
        List<String> faults = LedgerCopy.faults(source.ledger());
        if (faults.isEmpty()) {
          return Outcome.done(source);
        }
        fault = "is damaged: " + faults.get(0);
      } catch (LedgerUnusableException unreadable) {
        fault = "can't be read as a ledger";
      }
    }
    return Outcome.refused(
        Outcome.Kind.DAMAGE,
        "the ledger of snapshot " + source.name() + " " + fault,
        "name an older one with --snapshot; nothing was changed");
  }

  Path ledger() {
    return folder.resolve(Snapshots.LEDGER);
  }

  Path objects() {
    return backup.resolve("objects");
  }
}
