package org.vestibule.flow.keeping;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Synced;
import org.vestibule.store.Finding;
import org.vestibule.store.ledger.LedgerCopy;
import org.vestibule.store.objects.FolderObjectStore;
import org.vestibule.store.objects.ObjectStore;
import org.vestibule.store.steps.WriteSteps;

/** Copies objects that a ledger knows to another disk, each once, and compares their hashes. */
final class ObjectCopies {

  private final ObjectStore from;
  private final ObjectStore to;
  private final boolean reread;
  private final Set<Path> touched = new HashSet<>();
  private final List<Finding> findings = new ArrayList<>();
  private int copied;
  private int mended;

  /**
   * @param reread true if copies that are there already are read again and compared
   */
  ObjectCopies(ObjectStore from, Path backup, boolean reread) {
    this.from = from;
    this.to = new FolderObjectStore(backup.resolve("objects"), WriteSteps.PASS);
    this.reread = reread;
  }

  /** Copies one object unless a sound copy is there; what is wrong with it is noted. */
  void copy(LedgerCopy.Kept object) throws IOException {
    Path target = to.path(object.sopUid()).orElseThrow();
    boolean there = Files.exists(target);
    if (there && isSound(target, object)) {
      return;
    }
    Optional<byte[]> bytes = sound(object, there);
    if (bytes.isPresent()) {
      SafeCopy.write(target, bytes.get());
      touched.add(SafeCopy.parent(target));
      copied += there ? 0 : 1;
      mended += there ? 1 : 0;
    }
  }

  private boolean isSound(Path target, LedgerCopy.Kept object) throws IOException {
    return Files.size(target) == object.sizeBytes()
        && (!reread || ContentHash.of(target).equals(object.fileHash()));
  }

  private Optional<byte[]> sound(LedgerCopy.Kept object, boolean spoiltCopy) {
    String what;
    Finding.Kind kind = Finding.Kind.DAMAGE;
    try {
      Optional<byte[]> bytes = from.get(object.sopUid());
      if (bytes.isPresent() && ContentHash.of(bytes.get()).equals(object.fileHash())) {
        return bytes;
      }
      what = bytes.isPresent() ? " is damaged here" : " is kept but not there";
      kind = bytes.isPresent() ? kind : Finding.Kind.MISSING;
    } catch (IOException unreadable) {
      what = " can't be read from the disk";
    }
    findings.add(
        new Finding(
            kind,
            "object " + object.sopUid() + what + (spoiltCopy ? ", and so is its copy" : ""),
            "everything else was copied; check the disk, and run verify"));
    return Optional.empty();
  }

  /** Puts the names of all copies on the disk. */
  void finish() throws IOException {
    for (Path folder : touched) {
      Synced.folder(folder);
      Synced.folder(SafeCopy.parent(folder));
    }
  }

  /** Removes what interrupted backups left. Only for the holder of the backup's lock. */
  void clearInterrupted() throws IOException {
    to.clearInterrupted();
  }

  int copied() {
    return copied;
  }

  /** How many copies that were spoilt on the other disk were made anew. */
  int mended() {
    return mended;
  }

  List<Finding> findings() {
    return List.copyOf(findings);
  }
}
