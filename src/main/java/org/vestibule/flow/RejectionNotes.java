package org.vestibule.flow;

import java.io.IOException;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.vestibule.assign.DecisionRecord;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.DicomFile;
import org.vestibule.dicom.Part10Reader;
import org.vestibule.dicom.Tags;
import org.vestibule.encode.NoteIdentity;
import org.vestibule.encode.RejectionNote;
import org.vestibule.encode.RejectionReason;
import org.vestibule.flow.DoorRules.Identity;
import org.vestibule.forward.NoteSource;
import org.vestibule.store.ledger.CorrectionRow;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.Ledger;
import org.vestibule.store.ledger.NoteRow;
import org.vestibule.store.objects.Put;

/**
 * Makes the notes by which an archive is told of corrections, and keeps them among the objects.
 * Whoever calls holds the run lock.
 */
public final class RejectionNotes implements NoteSource {

  private final Practice practice;
  private final Ledger ledger;

  public RejectionNotes(Practice practice) {
    this.practice = practice;
    this.ledger = practice.store().ledger();
  }

  /**
   * Makes every note that is missing, those of corrections that earlier versions of the program
   * made among them.
   *
   * @return why notes could not be made; empty if none is missing now
   */
  public List<Refused<String>> all() throws IOException {
    return make(ledger.notes().missing());
  }

  /** The note about a revision that no longer counts; made now if it is missing. */
  @Override
  public Outcome<String> note(ContentHash photo, int revision) throws IOException {
    Optional<NoteRow> there = ledger.notes().of(photo, revision);
    if (there.isPresent()) {
      return Outcome.done(there.get().sopUid());
    }
    for (CorrectionRow correction : ledger.corrections().of(photo)) {
      if (correction.revision() == revision) {
        return make(correction);
      }
    }
    return Outcome.refused(
        "revision " + revision + " of photograph " + photo.brief() + " was never taken back",
        "run verify");
  }

  /** Makes the notes of corrections that a run did not come to, but no older version's. */
  List<Refused<String>> begun() throws IOException {
    return make(ledger.notes().missing().stream().filter(row -> row.reason() != null).toList());
  }

  /** Makes the missing notes about one photograph. */
  List<Refused<String>> about(ContentHash hash) throws IOException {
    return make(ledger.notes().missing().stream().filter(row -> row.hash().equals(hash)).toList());
  }

  private List<Refused<String>> make(List<CorrectionRow> corrections) throws IOException {
    List<Refused<String>> failed = new ArrayList<>();
    for (CorrectionRow correction : corrections) {
      if (make(correction) instanceof Refused<String> refused) {
        failed.add(refused);
      }
    }
    return failed;
  }

  /** The UID of the note, which is on the disk now and in the ledger. */
  private Outcome<String> make(CorrectionRow correction) throws IOException {
    List<Intent> intents =
        ledger.intents().of(correction.hash()).stream()
            .filter(intent -> intent.revision() == correction.revision())
            .filter(intent -> ledger.kept().find(intent.sopUid()).isPresent())
            .toList();
    List<DataSet> objects = new ArrayList<>();
    for (Intent intent : intents) {
      Outcome<DataSet> object = object(intent);
      if (object instanceof Refused<DataSet> refused) {
        return refused.as();
      }
      objects.add(object.orThrow());
    }
    RejectionReason reason = reason(correction);
    NoteIdentity identity = ledger.notes().identity(intents.get(0), reason.word(), correction.at());
    LocalDateTime at = LocalDateTime.ofInstant(correction.at(), practice.settings().zone());
    Optional<LocalDateTime> begun;
    try {
      begun = begunAt(identity.sopInstanceUid());
    } catch (IOException disk) {
      return Outcome.refused(
          Outcome.Kind.DAMAGE,
          "the rejection note " + identity.sopInstanceUid() + " was begun and can't be read",
          "look at the disk and at who may read that file, then run ingest: it makes the note");
    }
    Outcome<byte[]> note =
        RejectionNote.write(
            objects,
            identity,
            reason,
            begun.isPresent() ? begun.get() : asItMayStand(intents.get(0), at));
    return note instanceof Done<byte[]> done
        ? keep(correction, identity.sopInstanceUid(), reason, done.value())
        : ((Refused<byte[]>) note).as();
  }

  /**
   * The time that stands in the note if a run that came no further has put it on the disk: the
   * practice's clock may be another one since.
   */
  private Optional<LocalDateTime> begunAt(String sopUid) throws IOException {
    Optional<byte[]> bytes = practice.store().objects().get(sopUid);
    if (bytes.isEmpty() || !(Part10Reader.read(bytes.get()) instanceof Done<DicomFile> file)) {
      return Optional.empty();
    }
    DataSet note = file.value().data();
    return note.date(Tags.ContentDate)
        .flatMap(date -> note.time(Tags.ContentTime).map(date::atTime));
  }

  /** The time of a correction would tell by how much the dates of objects were moved. */
  private LocalDateTime asItMayStand(Intent intent, LocalDateTime at) {
    Identity said = Making.identity(intent);
    if (said == Identity.KEPT) {
      return at;
    }
    DecisionRecord decided = decided(intent);
    return new Door(practice).moved(said, decided.issuer(), decided.patientId(), at);
  }

  private Outcome<String> keep(
      CorrectionRow correction, String uid, RejectionReason reason, byte[] note)
      throws IOException {
    Outcome<Put> put = practice.store().objects().putIfAbsent(uid, note);
    if (put instanceof Refused<Put> badDisk) {
      throw new IOException(badDisk.sentence());
    }
    if (put.orThrow() == Put.TAKEN) {
      return Outcome.refused(
          Outcome.Kind.DAMAGE,
          "another file has the name of the rejection note " + uid,
          "move that file elsewhere, then run ingest: it makes the note");
    }
    ledger
        .notes()
        .keep(
            correction.hash(),
            correction.revision(),
            uid,
            reason.word(),
            ContentHash.of(note),
            note.length);
    return Outcome.done(uid);
  }

  private Outcome<DataSet> object(Intent intent) {
    Optional<byte[]> bytes;
    try {
      bytes = practice.store().objects().get(intent.sopUid());
    } catch (IOException disk) {
      return Outcome.refused(
          Outcome.Kind.DAMAGE,
          "object "
              + intent.sopUid()
              + " can't be read, and the note that it no longer counts can't be made without it",
          "look at the disk and at who may read that file, then run ingest: it makes the note");
    }
    if (bytes.isEmpty()) {
      return Outcome.refused(
          Outcome.Kind.DAMAGE,
          "object "
              + intent.sopUid()
              + " is missing, and the note that it no longer counts can't be"
              + " made without it",
          "restore it from the backup, then run ingest: it makes the note");
    }
    return Part10Reader.read(bytes.get()).map(file -> file.data());
  }

  /** As it was stated; for an older version's correction, what follows from what was changed. */
  private RejectionReason reason(CorrectionRow correction) {
    String stated = correction.reason();
    String word = stated == null ? derived(correction) : stated;
    return RejectionReason.of(word)
        .orElseThrow(() -> new IllegalStateException("the table of reasons lacks " + word));
  }

  private String derived(CorrectionRow correction) {
    Integer revision = correction.newRevision();
    if (revision == null) {
      return RejectionReason.UNSAFE;
    }
    return ReasonOfMove.of(
        decided(correction.hash(), correction.revision()), decided(correction.hash(), revision));
  }

  private DecisionRecord decided(ContentHash hash, int revision) {
    return ledger.intents().of(hash).stream()
        .filter(intent -> intent.revision() == revision)
        .findFirst()
        .map(this::decided)
        .orElseThrow();
  }

  private DecisionRecord decided(Intent intent) {
    return DecisionJson.read(ledger.decisions().find(intent.decisionId()).orElseThrow().json());
  }
}
