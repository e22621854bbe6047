package org.vestibule.flow;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.vestibule.assign.DecisionRecord;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Part10Reader;
import org.vestibule.dicom.Tags;
import org.vestibule.encode.Codestream;
import org.vestibule.store.PhotoRef;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.PhotoState;

/** What is kept of a photograph: its objects, read back. */
public final class KeptPhoto {

  private final Practice practice;

  public KeptPhoto(Practice practice) {
    this.practice = practice;
  }

  /** The object that an id names, as a data set. */
  public Outcome<DataSet> object(String id) throws IOException {
    Outcome<PhotoRef> found = practice.store().ids().find(id);
    if (found instanceof Refused<PhotoRef> refused) {
      return refused.as();
    }
    return object(found.orThrow());
  }

  /**
   * What is recorded of the object that an id names. Of an object that doesn't say whose it is, the
   * ledger does.
   */
  public Outcome<List<PhotoWords.Line>> words(String id) throws IOException {
    Outcome<PhotoRef> found = practice.store().ids().find(id);
    if (found instanceof Refused<PhotoRef> refused) {
      return refused.as();
    }
    return object(found.orThrow()).map(object -> words(object, found.orThrow().hash()));
  }

  List<PhotoWords.Line> words(DataSet object, ContentHash photo) {
    Optional<DecisionRecord> decided =
        saysWhose(object) ? Optional.empty() : CurrentDecision.of(photo, practice.store().ledger());
    List<PhotoWords.Line> lines =
        new ArrayList<>(
            decided
                .map(
                    record ->
                        PhotoWords.of(
                            object, record, new SourceFiles(practice).facts(photo).takenAt()))
                .orElseGet(() -> PhotoWords.of(object)));
    List<String> advice = new PictureAdvice(practice).standing(photo);
    if (!advice.isEmpty()) {
      lines.add(new PhotoWords.Line("Could be better", String.join("; ", advice)));
    }
    return List.copyOf(lines);
  }

  /** False for an object that was made without the patient's identity. */
  static boolean saysWhose(DataSet object) {
    return object.string(Tags.PatientIdentityRemoved).filter("YES"::equals).isEmpty();
  }

  Outcome<DataSet> object(PhotoRef photo) throws IOException {
    Optional<Intent> intent =
        practice.store().ledger().intents().current(photo.hash()).stream()
            .filter(one -> one.role() == photo.role())
            .findFirst();
    if (intent.isEmpty()) {
      return notFiled(photo.hash());
    }
    Optional<byte[]> bytes = practice.store().objects().get(intent.get().sopUid());
    if (bytes.isEmpty()) {
      return Outcome.refused(
          Outcome.Kind.DAMAGE,
          "the object of this photograph is missing from the objects folder",
          "restore it from the backup; verify names everything that is missing");
    }
    return Part10Reader.read(bytes.get()).map(file -> file.data());
  }

  /** The JPEG of the object that an id names, as it is shown: upright and true-handed. */
  public Outcome<byte[]> jpeg(String id) throws IOException {
    return object(id).then(Codestream::of);
  }

  private <T> Outcome<T> notFiled(ContentHash hash) {
    PhotoState state =
        practice
            .store()
            .ledger()
            .photos()
            .find(hash)
            .map(row -> row.state())
            .orElse(PhotoState.SEEN);
    return switch (state) {
      case WAITING ->
          Outcome.refused(
              "this photograph is not filed: it waits for a person",
              "\"vestibule waiting\" says why, \"vestibule file\" files it");
      case REJECTED ->
          Outcome.refused(
              "this photograph was rejected and is out of the record",
              "file it again if that was wrong");
      default ->
          new CardSightings(practice).isCard(hash)
              ? Outcome.refused(
                  "a card is in this photograph, so it is not filed",
                  "if it shows more than the card, file it with a crop that leaves the card out")
              : Outcome.refused(
                  "this photograph is not filed yet", "run ingest: it completes the filing");
    };
  }
}
