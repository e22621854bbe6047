package org.vestibule.flow.keeping;

import java.io.IOException;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.check.CheckReport;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.DicomFile;
import org.vestibule.dicom.Part10Reader;
import org.vestibule.dicom.Tags;
import org.vestibule.encode.Codestream;
import org.vestibule.encode.RejectionNote;
import org.vestibule.flow.PhotoWords;
import org.vestibule.flow.Practice;
import org.vestibule.jpeg.JpegStructure;
import org.vestibule.jpeg.SoundScan;
import org.vestibule.store.index.IndexRecord;
import org.vestibule.store.index.IndexRecordJson;
import org.vestibule.store.ledger.ChangeRow;
import org.vestibule.store.ledger.KeptObject;
import org.vestibule.store.ledger.Ledger;
import org.vestibule.store.ledger.PhotoRow;
import org.vestibule.store.ledger.PhotoState;
import org.vestibule.store.ledger.VisitRow;

/**
 * Reads the objects that the ledger does not know, for a person, and says what speaks against
 * entering them again. An object does not say whether it was rejected or replaced later, nor who
 * decided it. Taking the photograph in again proves most: the object of that name is compared byte
 * for byte and adopted.
 */
final class Orphans {

  private static final String AGAIN =
      "take its photograph in again: decided as it was, it gets this very object, compared byte for"
          + " byte; where the file is gone, enter it again with \"repair --enter-objects\"; but leave it"
          + " if it was rejected or corrected since";
  private static final String BOTH =
      "look at both; if what is filed is right, do nothing; if this one is right, correct the filed"
          + " one with move";
  private static final String LEAVE =
      "leave it as it is, or look for a sound copy in a backup; it is in no search";

  private static final String CORRECT_AGAIN =
      "the ledger doesn't know that correction: make it again, with move or reject, unless that was"
          + " done; this file is in no search";

  private static final DateTimeFormatter SECOND =
      DateTimeFormatter.ofPattern("uuuuMMddHHmmss", Locale.ROOT);

  /** An orphan's file, as far as it can be read. */
  private record Read(String uid, String fault, DataSet data, String picture) {

    String taken() {
      String at = data.string(Tags.AcquisitionDateTime).orElse("");
      return at.length() < 14 ? "" : at.substring(0, 14);
    }

    String frame() {
      return data.items(Tags.SourceImageSequence).stream()
          .flatMap(item -> item.string(Tags.ReferencedSOPInstanceUID).stream())
          .findFirst()
          .orElse("");
    }
  }

  private final Practice practice;
  private final Ledger ledger;

  Orphans(Practice practice) {
    this.practice = practice;
    this.ledger = practice.store().ledger();
  }

  List<Orphan> all() throws IOException {
    Map<String, Read> found = new LinkedHashMap<>();
    for (String uid : practice.store().objects().list()) {
      if (!isKept(uid) && ledger.intents().find(uid).isEmpty()) {
        found.put(uid, read(uid));
      }
    }
    if (found.isEmpty()) {
      return List.of();
    }
    Map<String, String> filed = filed();
    return found.values().stream().map(one -> orphan(one, found, filed)).toList();
  }

  private boolean isKept(String uid) {
    return ledger.kept().find(uid).isPresent() || ledger.notes().find(uid).isPresent();
  }

  private Read read(String uid) {
    Optional<byte[]> bytes;
    try {
      bytes = practice.store().objects().get(uid);
    } catch (IOException unreadable) {
      bytes = Optional.empty();
    }
    if (bytes.isEmpty()) {
      return new Read(uid, "it can't be read from the disk", new DataSet(), "");
    }
    Outcome<DicomFile> file = Part10Reader.read(bytes.get());
    if (file instanceof Refused<DicomFile> refused) {
      return new Read(uid, refused.reason(), new DataSet(), "");
    }
    DataSet data = file.orThrow().data();
    Outcome<byte[]> picture = Codestream.of(data);
    Outcome<JpegStructure> sound = picture.then(SoundScan::check);
    String fault = "";
    if (!data.string(Tags.SOPInstanceUID).equals(Optional.of(uid))) {
      fault = "it is not the object that its name says";
    } else if (isNote(data)) {
      fault =
          "it is a rejection note, by which these objects no longer count: "
              + String.join(", ", rejected(data));
    } else if (!isOurs(data)) {
      fault = "it was not made by this program";
    } else if (sound instanceof Refused<JpegStructure> refused) {
      fault = refused.reason();
    } else if (!CheckReport.of(uid, bytes.get()).passes()) {
      fault = "it breaks the DICOM standard's rules for such objects; \"check\" says where";
    }
    String hash =
        picture instanceof Outcome.Done<byte[]> done ? ContentHash.of(done.value()).hex() : "";
    return new Read(uid, fault, data, hash);
  }

  private static boolean isNote(DataSet data) {
    return data.string(Tags.SOPClassUID).equals(Optional.of(RejectionNote.SOP_CLASS));
  }

  private static List<String> rejected(DataSet note) {
    return note.items(Tags.ContentSequence).stream()
        .flatMap(item -> item.item(Tags.ReferencedSOPSequence).stream())
        .flatMap(object -> object.string(Tags.ReferencedSOPInstanceUID).stream())
        .toList();
  }

  private static boolean isOurs(DataSet data) {
    return data.items(Tags.ContributingEquipmentSequence).stream()
        .anyMatch(item -> item.string(Tags.Manufacturer).equals(Optional.of("Vestibule")));
  }

  /** The ids of photographs that are filed, by their pictures and by the second they were taken. */
  private Map<String, String> filed() {
    Map<String, String> filed = new HashMap<>();
    for (PhotoRow photo : ledger.photos().in(PhotoState.KEPT)) {
      String id = practice.store().ids().of(photo.hash());
      ledger
          .changes()
          .latest(photo.hash().hex())
          .map(ChangeRow::record)
          .map(IndexRecordJson::read)
          .map(IndexRecord::takenAt)
          .ifPresent(at -> filed.put(second(at), id));
      ledger.intents().of(photo.hash()).stream()
          .flatMap(intent -> ledger.kept().find(intent.sopUid()).stream())
          .map(KeptObject::pixelHash)
          .forEach(picture -> filed.put(picture.hex(), id));
    }
    return filed;
  }

  private static String second(LocalDateTime at) {
    return SECOND.format(at);
  }

  private Orphan orphan(Read one, Map<String, Read> all, Map<String, String> filed) {
    if (!one.fault().isEmpty()) {
      String advice = isNote(one.data()) ? CORRECT_AGAIN : LEAVE;
      return new Orphan(one.uid(), one.frame(), one.fault(), List.of(), List.of(), advice);
    }
    List<String> doubts = new ArrayList<>();
    String other = filed.getOrDefault(one.picture(), filed.getOrDefault(one.taken(), ""));
    if (!other.isEmpty()) {
      doubts.add(
          "Photograph "
              + other
              + " is filed and has the same picture or the same second: this may be a correction of"
              + " it that the ledger does not know, or one that was taken back.");
    }
    all.values().stream()
        .filter(second -> isRival(one, second))
        .forEach(
            second ->
                doubts.add(
                    "Object "
                        + second.uid()
                        + ", which the ledger doesn't know either, has the same picture or the same"
                        + " second: which of them counts can't be told from the files."));
    all.values().stream()
        .filter(note -> isNote(note.data()) && rejected(note.data()).contains(one.uid()))
        .forEach(
            note -> doubts.add("Rejection note " + note.uid() + " says that it no longer counts."));
    visitDoubt(one.data()).ifPresent(doubts::add);
    return new Orphan(
        one.uid(),
        one.frame(),
        "",
        PhotoWords.of(one.data()),
        doubts,
        other.isEmpty() ? AGAIN : BOTH);
  }

  /** Frame and crop of one filing belong together. */
  private static boolean isRival(Read one, Read other) {
    boolean sameShot =
        (!one.taken().isEmpty() && one.taken().equals(other.taken()))
            || (!one.picture().isEmpty() && one.picture().equals(other.picture()));
    return !one.uid().equals(other.uid())
        && sameShot
        && !one.frame().equals(other.uid())
        && !other.frame().equals(one.uid());
  }

  private Optional<String> visitDoubt(DataSet data) {
    String key = data.string(Tags.StudyID).orElse("");
    String patient = data.string(Tags.PatientID).orElse("");
    Optional<VisitRow> visit = key.isEmpty() ? Optional.empty() : ledger.visits().visit(key);
    return visit
        .filter(known -> !known.patientId().equals(patient))
        .map(known -> "Visit " + key + " is another patient's in the ledger.");
  }
}
