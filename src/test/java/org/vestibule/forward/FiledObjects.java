package org.vestibule.forward;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Uids;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Part10Writer;
import org.vestibule.dicom.Tags;
import org.vestibule.dicom.TransferSyntax;
import org.vestibule.dicom.Vr;
import org.vestibule.encode.Role;
import org.vestibule.store.ledger.DecisionRow;
import org.vestibule.store.ledger.Filing;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.KeptObject;
import org.vestibule.store.ledger.Ledger;
import org.vestibule.store.ledger.SeenFile;
import org.vestibule.store.objects.FolderObjectStore;
import org.vestibule.store.objects.ObjectStore;
import org.vestibule.store.steps.WriteSteps;

/** A ledger and objects of an invented practice, small enough for a thousand of them. */
final class FiledObjects implements AutoCloseable {

  static final String PHOTO = "1.2.840.10008.5.1.4.1.1.77.1.4";
  static final String NOTE = "1.2.840.10008.5.1.4.1.1.88.59";

  final Ledger ledger;
  final ObjectStore objects;
  private final Uids uids = new Uids(new byte[32]);

  FiledObjects(Path folder, Clock clock) {
    this(
        folder,
        clock,
        WriteSteps.PASS,
        new FolderObjectStore(folder.resolve("objects"), WriteSteps.PASS));
  }

  FiledObjects(Path folder, Clock clock, WriteSteps steps, ObjectStore objects) {
    ledger =
        Ledger.open(folder.resolve("ledger.sqlite"), "willow-lane", uids, clock, steps).orThrow();
    this.objects = objects;
  }

  /** Files a photograph, or files it anew for another patient; the UID of its object. */
  String file(String name, String patient) throws IOException {
    ContentHash hash = hash(name);
    ledger.arrivals().seen(new SeenFile(hash, name, 1000, ledgerTime()));
    DecisionRow decision = ledger.decisions().add(hash, "{}", "A. Finch", "person", "");
    Filing filing =
        new Filing(
            hash,
            decision.id(),
            patient,
            "1",
            "",
            patient,
            patient,
            null,
            "Lumo P1",
            "",
            List.of(Role.FRAME));
    Intent intent = ledger.intents().begin(filing, "A. Finch").get(0);
    byte[] file = object(intent, patient);
    objects.putIfAbsent(intent.sopUid(), file).orThrow();
    ContentHash sum = ContentHash.of(file);
    ledger
        .kept()
        .keep(hash, List.of(new KeptObject(intent.sopUid(), sum, sum, file.length, 0, 0)), "{}");
    return intent.sopUid();
  }

  private static java.time.Instant ledgerTime() {
    return java.time.Instant.parse("2026-03-12T08:00:00Z");
  }

  static ContentHash hash(String name) {
    return ContentHash.of(name.getBytes(UTF_8));
  }

  private static byte[] object(Intent intent, String patient) {
    DataSet data =
        new DataSet()
            .put(Tags.SOPClassUID, PHOTO)
            .put(Tags.SOPInstanceUID, intent.sopUid())
            .put(Tags.StudyInstanceUID, intent.studyUid())
            .put(Tags.SeriesInstanceUID, intent.seriesUid())
            .put(Tags.PatientID, patient)
            .put(Tags.PixelData, Vr.OB, new byte[64]);
    return Part10Writer.write(data, TransferSyntax.EXPLICIT_LITTLE_ENDIAN).orThrow();
  }

  /** Makes a note as the use cases do: once for each revision, kept among the objects. */
  Outcome<String> note(ContentHash photo, int revision) throws IOException {
    String uid = uids.of("note", photo.hex(), "" + revision);
    Optional<byte[]> there = objects.get(uid);
    if (there.isEmpty()) {
      Intent about =
          ledger.intents().of(photo).stream()
              .filter(intent -> intent.revision() == revision)
              .findFirst()
              .orElseThrow();
      DataSet data =
          new DataSet()
              .put(Tags.SOPClassUID, NOTE)
              .put(Tags.SOPInstanceUID, uid)
              .put(Tags.StudyInstanceUID, about.studyUid())
              .put(Tags.SeriesInstanceUID, uids.of("note series", about.seriesUid()));
      objects
          .putIfAbsent(
              uid, Part10Writer.write(data, TransferSyntax.EXPLICIT_LITTLE_ENDIAN).orThrow())
          .orThrow();
    }
    return Outcome.done(uid);
  }

  @Override
  public void close() {
    ledger.close();
  }
}
