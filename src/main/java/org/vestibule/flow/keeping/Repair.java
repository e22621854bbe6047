package org.vestibule.flow.keeping;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Verify;
import org.vestibule.store.Finding;
import org.vestibule.store.RunLock;
import org.vestibule.store.ledger.KeptObject;
import org.vestibule.store.ledger.NoteRow;
import org.vestibule.store.objects.FolderObjectStore;
import org.vestibule.store.objects.ObjectStore;
import org.vestibule.store.steps.WriteSteps;

/** Mends what can be mended without guessing, and lists the rest for a person. */
public final class Repair {

  private final Practice practice;
  private final ObjectStore objects;
  private final @Nullable ObjectStore copies;
  private final boolean dryRun;
  private final @Nullable String enterBy;
  private final List<String> broughtBack = new ArrayList<>();

  private Repair(
      Practice practice, @Nullable ObjectStore copies, boolean dryRun, @Nullable String enterBy) {
    this.practice = practice;
    this.objects = practice.store().objects();
    this.copies = copies;
    this.dryRun = dryRun;
    this.enterBy = enterBy;
  }

  /**
   * Mends a practice's store.
   *
   * @param from a backup folder to take sound objects from; null for none
   * @param dryRun true to say what would be done, and change nothing
   * @param enterBy who says that objects which the ledger does not know are to be entered again;
   *     null if they are only to be listed
   */
  @SuppressWarnings("try") // the lock is held, not used
  public static Outcome<RepairReport> run(
      Practice practice, @Nullable Path from, boolean dryRun, @Nullable String enterBy)
      throws IOException {
    Path copies = from == null ? null : from.resolve("objects");
    if (from != null && copies != null && !Files.isDirectory(copies)) {
      return Outcome.refused(
          "there are no objects in that folder (" + from.getFileName() + ")",
          "name the folder that backup wrote, the one with " + BackupText.NAME + " in it");
    }
    Outcome<RunLock> lock = practice.store().lock("repair");
    if (!(lock instanceof Done<RunLock> held)) {
      return ((Refused<RunLock>) lock).as();
    }
    try (RunLock holding = held.value()) {
      Outcome<Practice> sound = LedgerSoundness.require(practice);
      ObjectStore source = copies == null ? null : new FolderObjectStore(copies, WriteSteps.PASS);
      return sound instanceof Refused<Practice> refused
          ? refused.as()
          : Outcome.done(new Repair(practice, source, dryRun, enterBy).locked());
    }
  }

  private RepairReport locked() throws IOException {
    int leftovers =
        dryRun
            ? (int) objects.strays().stream().filter(objects::isInterrupted).count()
            : objects.clearInterrupted();
    Iterator<KeptObject> kept = practice.store().ledger().kept().all().iterator();
    while (kept.hasNext()) {
      KeptObject object = kept.next();
      bringBack(object.sopUid(), object.fileHash());
    }
    for (NoteRow note : practice.store().ledger().notes().all()) {
      bringBack(note.sopUid(), note.fileHash());
    }
    List<Orphan> orphans = new Orphans(practice).all();
    List<String> entered = List.of();
    if (enterBy != null) {
      Reentering.Result result = new Reentering(practice, enterBy, copies, dryRun).enter(orphans);
      entered = result.entered();
      orphans = result.left();
      if (!dryRun && !entered.isEmpty()) {
        practice.store().followIndex();
      }
    }
    boolean index =
        practice.store().verifier().verify(uid -> false, (i, k, b) -> Optional.empty()).stream()
            .anyMatch(finding -> finding.kind() == Finding.Kind.INDEX);
    if (index && !dryRun) {
      practice.store().reindex();
    }
    if (!dryRun && (!broughtBack.isEmpty() || index)) {
      practice
          .store()
          .ledger()
          .events()
          .add(
              "vestibule",
              "repaired",
              null,
              broughtBack.size() + " objects brought back, index made again: " + index);
    }
    return new RepairReport(leftovers, broughtBack, index, entered, orphans, rest());
  }

  /** What is still wrong; the orphans are listed by themselves. */
  private List<Finding> rest() throws IOException {
    Set<String> mended = new HashSet<>(broughtBack);
    return Verify.run(practice, uid -> !(dryRun && mended.contains(uid))).stream()
        .filter(finding -> finding.kind() != Finding.Kind.ORPHAN)
        .filter(finding -> !(dryRun && finding.kind() == Finding.Kind.INDEX))
        .toList();
  }

  /** Puts a sound copy where an object is damaged or missing; the damaged file is set aside. */
  private void bringBack(String uid, ContentHash hash) throws IOException {
    ObjectStore source = copies;
    if (source == null || isSound(objects, uid, hash) || !isSound(source, uid, hash)) {
      return;
    }
    broughtBack.add(uid);
    Path target = objects.path(uid).orElseThrow();
    if (dryRun) {
      return;
    }
    if (Files.exists(target)) {
      Path aside = SetAside.folder(practice.home(), practice.clock());
      Files.createDirectories(aside);
      Files.move(target, aside.resolve(String.valueOf(target.getFileName())));
    }
    objects.putIfAbsent(uid, source.get(uid).orElseThrow()).orThrow();
  }

  private static boolean isSound(ObjectStore store, String uid, ContentHash hash) {
    try {
      return store.get(uid).filter(bytes -> ContentHash.of(bytes).equals(hash)).isPresent();
    } catch (IOException unreadable) {
      return false;
    }
  }
}
