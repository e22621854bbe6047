package org.vestibule.flow;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.Decision;
import org.vestibule.assign.Patient;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Part10Reader;
import org.vestibule.dicom.Tags;
import org.vestibule.encode.Codestream;
import org.vestibule.encode.ReleasePart;
import org.vestibule.encode.Role;
import org.vestibule.encode.SeriesWords;
import org.vestibule.store.index.IndexRecordJson;
import org.vestibule.store.ledger.DecisionRow;
import org.vestibule.store.ledger.KeptObject;
import org.vestibule.store.ledger.Ledger;
import org.vestibule.store.ledger.PatientRow;
import org.vestibule.store.ledger.RestoredFilings.Entry;
import org.vestibule.store.ledger.RestoredFilings.Part;
import org.vestibule.store.ledger.SeenFile;
import org.vestibule.store.ledger.VisitRow;

/**
 * Enters a photograph again whose objects are there and of which the ledger knows nothing. Its
 * file's hash is not known and can't be had from the object; the hash of the frame's picture stands
 * for it.
 */
public final class Reentry {

  private static final String AGAIN = "take its photograph in again";

  /** The bytes of one object. */
  @SuppressWarnings("ArrayRecordComponent") // Read once, never compared.
  public record Found(String uid, byte[] bytes) {
    public Found {
      bytes = bytes.clone();
    }

    @Override
    public byte[] bytes() {
      return bytes.clone();
    }

    DataSet data() {
      return Part10Reader.read(bytes).orThrow().data();
    }
  }

  private final Practice practice;
  private final Ledger ledger;
  private final String by;

  /**
   * @param by who says that it is to be entered
   */
  public Reentry(Practice practice, String by) {
    this.practice = practice;
    this.ledger = practice.store().ledger();
    this.by = by;
  }

  /**
   * Enters a filing; refused, nothing is changed.
   *
   * @param dryRun true to say only whether it could be entered
   * @return the photograph's id
   */
  public Outcome<String> enter(Found frame, @Nullable Found crop, boolean dryRun) {
    DataSet said = frame.data();
    if (!KeptPhoto.saysWhose(said)) {
      return Outcome.refused("it was made without identity and doesn't say whose it is", AGAIN);
    }
    if (crop == null
        && said.string(Tags.ImageComments).orElse("").contains(ReleasePart.HOLD_BACK)) {
      return Outcome.refused(
          "it is a whole frame whose crop is not there or can't be read, and may show what was cut"
              + " away",
          "look for the crop in a backup");
    }
    List<String> why = List.of("read back from object " + frame.uid());
    Outcome<ReadFiling> read =
        ReadFiling.of(practice, said, crop == null ? null : crop.data(), by, why);
    if (read instanceof Refused<ReadFiling> refused) {
      return refused.as();
    }
    ReadFiling filing = read.orThrow();
    Optional<Refused<String>> doubt = doubt(filing, said, crop);
    if (doubt.isPresent()) {
      return doubt.get();
    }
    ContentHash hash = ContentHash.of(Codestream.of(said).orThrow());
    if (ledger.photos().find(hash).isPresent()) {
      return Outcome.refused("its picture was entered before", "nothing needs to be done");
    }
    Entry entry = entry(hash, "", filing, frame, crop);
    return ledger
        .restored()
        .fits(entry)
        .map(fits -> dryRun ? hash.brief() : write(hash, filing, frame, crop));
  }

  private Optional<Refused<String>> doubt(ReadFiling filing, DataSet frame, @Nullable Found crop) {
    Decision decision = filing.decision();
    Patient patient = decision.visit().patient();
    String device = Descriptions.device(filing.facts());
    if (!isOurs(frame, decision, device, Role.FRAME, crop != null)) {
      return Optional.of(
          new Refused<>("its series was not made with this practice's secret", AGAIN));
    }
    if (crop != null && !isOurs(crop.data(), decision, device, Role.CROP, true)) {
      return Optional.of(
          new Refused<>("the series of its crop was not made with this practice's secret", AGAIN));
    }
    Optional<PatientRow> known = ledger.visits().patient(patient.issuer(), patient.id());
    if (known.filter(row -> !row.equals(VisitBook.patientRow(patient))).isPresent()) {
      return Optional.of(
          new Refused<>("the ledger knows this patient number with other details", AGAIN));
    }
    return Optional.empty();
  }

  private boolean isOurs(
      DataSet object, Decision decision, String device, Role role, boolean cropped) {
    String set = SeriesWords.of(decision.view(), Role.FRAME, cropped).set();
    return ledger.restored().isOurs(ReadFiling.identity(object), device, set, role);
  }

  private String write(ContentHash hash, ReadFiling filing, Found frame, @Nullable Found crop) {
    return ledger.together(
        () -> {
          String name = frame.uid() + ".dcm";
          long size = Codestream.of(frame.data()).orThrow().length;
          ledger.arrivals().seen(new SeenFile(hash, name, size, practice.clock().instant()));
          ledger.arrivals().facts(hash, FactsJson.KIND, FactsJson.write(filing.facts()));
          new KeptPictures(practice).read(hash, frame.uid(), filing.comment().part());
          PhotoMarks marks = new PhotoMarks(practice);
          marks.arrived(hash, name, filing.facts());
          marks.filedUnder(hash, filing.decision().visit().key());
          marks.restored(hash);
          ledger.visits().put(VisitBook.patientRow(filing.decision().visit().patient()), by);
          VisitRow visit = new VisitBook(practice).visitRow(filing.decision().visit());
          if (ledger.visits().visit(visit.key()).isEmpty()) {
            ledger.visits().put(visit, by);
          }
          DecisionRow row =
              ledger
                  .decisions()
                  .add(hash, DecisionJson.write(record(filing)), by, "its object, read back", "");
          ledger.restored().enter(entry(hash, row.id(), filing, frame, crop));
          ledger.events().add(by, "restored from object", hash, frame.uid());
          return practice.store().ids().of(hash);
        });
  }

  private static org.vestibule.assign.DecisionRecord record(ReadFiling filing) {
    return org.vestibule.assign.DecisionRecord.of(filing.decision());
  }

  private Entry entry(
      ContentHash hash, String decision, ReadFiling filing, Found frame, @Nullable Found crop) {
    List<Part> parts = new ArrayList<>();
    parts.add(part(Role.FRAME, frame, filing.comment()));
    if (crop != null) {
      String comment = crop.data().string(Tags.ImageComments).orElse("");
      parts.add(part(Role.CROP, crop, new ObjectComment(comment)));
    }
    Found face = crop == null ? frame : crop;
    return new Entry(
        hash,
        decision,
        filing.decision().visit().patient().issuer(),
        filing.decision().visit().patient().id(),
        filing.decision().visit().key(),
        parts,
        IndexRecordJson.write(
            Descriptions.filed(
                hash,
                decision.isEmpty() ? hash.brief() : practice.store().ids().of(hash),
                face.uid(),
                filing.facts(),
                filing.decision(),
                List.of())));
  }

  private static Part part(Role role, Found object, ObjectComment comment) {
    byte[] bytes = object.bytes();
    DataSet data = object.data();
    return new Part(
        role,
        ReadFiling.identity(data),
        new KeptObject(
            object.uid(),
            ContentHash.of(bytes),
            ContentHash.of(Codestream.of(data).orThrow()),
            bytes.length,
            comment.trimmedColumns(),
            comment.trimmedRows()));
  }
}
