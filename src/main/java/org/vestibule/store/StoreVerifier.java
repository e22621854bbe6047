package org.vestibule.store;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.vestibule.base.ContentHash;
import org.vestibule.store.index.PhotoIndex;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.KeptObject;
import org.vestibule.store.ledger.Ledger;
import org.vestibule.store.ledger.LedgerUnusableException;
import org.vestibule.store.ledger.NoteRow;
import org.vestibule.store.ledger.PhotoRow;
import org.vestibule.store.ledger.PhotoState;
import org.vestibule.store.objects.ObjectStore;

/** Re-reads every object, and holds objects, ledger and index against each other. */
public final class StoreVerifier {

  /** Looks into an object whose bytes are what was kept. */
  @FunctionalInterface
  public interface Inspection {
    /** What is wrong with it in words, or empty. */
    Optional<String> wrongWith(Intent intent, KeptObject kept, byte[] bytes);
  }

  /** The mark of photographs of cards, which are kept and never filed: both kind and value. */
  public static final String CARD = "card";

  private static final Finding UNREADABLE =
      new Finding(
          Finding.Kind.DAMAGE,
          "the ledger holds something that can't be read, so that not everything was looked at",
          "bring a sound copy back with \"restore --ledger-only\", then run verify; if it is found"
              + " again, please report it");

  private final ObjectStore objects;
  private final Ledger ledger;
  private final PhotoIndex index;

  StoreVerifier(ObjectStore objects, Ledger ledger, PhotoIndex index) {
    this.objects = objects;
    this.ledger = ledger;
    this.index = index;
  }

  /** Everything that is wrong; empty if the store is sound. */
  public List<Finding> verify() throws IOException {
    return verify(uid -> true, (intent, kept, bytes) -> Optional.empty());
  }

  /**
   * Everything that is wrong, with a look into each object that is read.
   *
   * @param which objects are read, by SOP Instance UID
   */
  public List<Finding> verify(Predicate<String> which, Inspection inspection) throws IOException {
    List<Finding> findings = new ArrayList<>();
    try {
      ledgerItself(findings);
      readAll(which, inspection, findings);
    } catch (LedgerUnusableException machine) {
      if (machine.trouble() != LedgerUnusableException.Trouble.DAMAGE) {
        throw machine;
      }
      findings.add(UNREADABLE);
    } catch (RuntimeException unreadable) {
      // SQLite keeps no checksums: what a row says may no longer be a number, a time or a hash.
      findings.add(UNREADABLE);
    }
    return findings;
  }

  private void readAll(Predicate<String> which, Inspection inspection, List<Finding> findings)
      throws IOException {
    ledger
        .kept()
        .all()
        .filter(object -> which.test(object.sopUid()))
        .forEach(object -> object(object, inspection, findings));
    for (NoteRow note : ledger.notes().all()) {
      if (which.test(note.sopUid())) {
        asKept(note.sopUid(), note.sizeBytes(), note.fileHash(), findings);
      }
    }
    unknownObjects(findings);
    gaps(findings);
    for (String stray : objects.strays()) {
      findings.add(
          new Finding(
              Finding.Kind.STRAY,
              "objects/" + stray + " is not an object",
              objects.isInterrupted(stray)
                  ? "an interrupted write left it; the next ingest removes it"
                  : "move it elsewhere; nothing else belongs among the objects"));
    }
    findings.addAll(new IndexComparison(ledger, index).findings());
  }

  private void ledgerItself(List<Finding> findings) {
    ledger.faults().forEach(fault -> damaged("the ledger's file is damaged: " + fault, findings));
    ledger.brokenSeals().forEach(broken -> damaged(broken, findings));
    ledger
        .changes()
        .firstBroken()
        .ifPresent(
            sequence ->
                findings.add(
                    new Finding(
                        Finding.Kind.DAMAGE,
                        "change " + sequence + " of the ledger does not follow from those before",
                        "somebody changed the ledger's history; restore it from its backup")));
    if (findings.isEmpty()) {
      ledger
          .contradictions()
          .forEach(said -> damaged("the ledger contradicts itself: " + said, findings));
    }
  }

  private static void damaged(String what, List<Finding> findings) {
    findings.add(
        new Finding(
            Finding.Kind.DAMAGE,
            what,
            "bring a sound copy back with \"restore --ledger-only\", then run verify"));
  }

  private void object(KeptObject object, Inspection inspection, List<Finding> findings) {
    Optional<byte[]> bytes =
        asKept(object.sopUid(), object.sizeBytes(), object.fileHash(), findings);
    if (bytes.isEmpty()) {
      return;
    }
    Intent intent = ledger.intents().find(object.sopUid()).orElseThrow();
    inspection
        .wrongWith(intent, object, bytes.get())
        .ifPresent(
            wrong ->
                findings.add(
                    new Finding(
                        Finding.Kind.DAMAGE,
                        "object " + object.sopUid() + ": " + wrong,
                        "please report this: the file is as it was written")));
  }

  /** The file's bytes if they are those that were kept; else a finding more. */
  private Optional<byte[]> asKept(
      String uid, long sizeBytes, ContentHash hash, List<Finding> findings) {
    Optional<byte[]> bytes;
    try {
      bytes = objects.get(uid);
    } catch (IOException unreadable) {
      findings.add(
          new Finding(
              Finding.Kind.DAMAGE,
              "object " + uid + " can't be read from the disk",
              "check the disk, and restore the object from the backup"));
      return Optional.empty();
    }
    if (bytes.isEmpty()) {
      findings.add(
          new Finding(
              Finding.Kind.MISSING,
              "object " + uid + " is kept but not there",
              "restore it from the backup of the objects"));
      return bytes;
    }
    ContentHash found = ContentHash.of(bytes.get());
    if (bytes.get().length == sizeBytes && found.equals(hash)) {
      return bytes;
    }
    findings.add(
        new Finding(
            Finding.Kind.DAMAGE,
            "object "
                + uid
                + " was kept with "
                + sizeBytes
                + " bytes and hash "
                + hash.brief()
                + ", and now has "
                + bytes.get().length
                + " bytes and hash "
                + found.brief(),
            "check the disk, and restore the object from the backup"));
    return Optional.empty();
  }

  private void unknownObjects(List<Finding> findings) throws IOException {
    for (String uid : objects.list()) {
      if (ledger.kept().find(uid).isPresent() || ledger.notes().find(uid).isPresent()) {
        continue;
      }
      Optional<String> givenUp = ledger.intents().whyAbandoned(uid);
      if (ledger.intents().find(uid).isEmpty()) {
        findings.add(
            new Finding(
                Finding.Kind.ORPHAN,
                "object " + uid + " is there, but the ledger knows nothing of it",
                "the ledger may be older than the objects: bring back its newest snapshot, or let repair"
                    + " list what the object holds"));
      } else if (givenUp.isPresent()) {
        findings.add(
            new Finding(
                Finding.Kind.GIVEN_UP,
                "object " + uid + " belongs to a filing that was given up: " + givenUp.get(),
                "nothing: it is in no record and no search, and may stay"));
      }
    }
  }

  private void gaps(List<Finding> findings) {
    for (Intent intent : ledger.intents().unfinished()) {
      findings.add(
          new Finding(
              Finding.Kind.GAP,
              "photograph "
                  + intent.hash().brief()
                  + " is being filed, and its object "
                  + intent.sopUid()
                  + " is not kept",
              "run ingest: it completes what was interrupted"));
    }
    Set<ContentHash> cards = Set.copyOf(ledger.arrivals().marked(CARD, CARD));
    for (PhotoRow photo : ledger.photos().in(PhotoState.SEEN)) {
      if (cards.contains(photo.hash())) {
        continue;
      }
      findings.add(
          new Finding(
              Finding.Kind.GAP,
              "photograph " + photo.hash().brief() + " arrived, and is neither filed nor waiting",
              "run ingest: it completes what was interrupted"));
    }
  }
}
