package org.vestibule.flow;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.Decision;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.base.Turn;
import org.vestibule.dental.Laid;
import org.vestibule.encode.CameraFacts;
import org.vestibule.encode.EncodeRequest;
import org.vestibule.encode.EncodedObject;
import org.vestibule.encode.Encoder;
import org.vestibule.encode.ObjectIdentity;
import org.vestibule.encode.ObjectProof;
import org.vestibule.encode.Role;
import org.vestibule.store.index.IndexRecord;
import org.vestibule.store.index.IndexRecordJson;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.KeptObject;
import org.vestibule.store.ledger.Ledger;

/**
 * Files one photograph: intent in the ledger, objects made, written, read back and proved, then
 * kept, frame and crop in one transaction. Whoever calls holds the run lock.
 */
final class Filer {

  private final Practice practice;
  private final Ledger ledger;
  private final Intentions intentions;
  private final Encoder encoder = new Encoder(CameraFacts.standard());

  Filer(Practice practice) {
    this.practice = practice;
    this.ledger = practice.store().ledger();
    this.intentions = new Intentions(practice);
  }

  /**
   * Files a photograph, or says why its picture can't be.
   *
   * @param source where the decision comes from, such as {@code manifest}
   * @param why the reason if an earlier decision is corrected; else empty
   */
  Outcome<FiledPhoto> file(Picture picture, Decision decision, Laid laid, String source, String why)
      throws IOException {
    List<Intent> intents = intentions.begin(picture, decision, source, why);
    return complete(picture, decision, laid, intents);
  }

  /** Makes, writes, proves and keeps what the ledger intends. */
  Outcome<FiledPhoto> complete(Picture picture, Decision decision, Laid laid, List<Intent> intents)
      throws IOException {
    new KeptPictures(practice).turned(picture.hash(), frame(intents), laid.turn());
    Turn before = picture.turned().inverse();
    Laid further =
        new Laid(before.then(laid.turn()), laid.shown(), laid.viewModifiers(), laid.because());
    EncodeRequest request =
        new EncodeRequest(
            picture.facts(),
            decision,
            further,
            before.then(sheet(picture)),
            identity(intents, Role.FRAME),
            decision.crop() == null ? null : identity(intents, Role.CROP),
            practice.settings().practiceName(),
            practice.settings().zone());
    Outcome<List<EncodedObject>> made =
        picture.fromRecord()
            ? encoder.encodeAgain(picture.bytes(), picture.profile(), request)
            : encoder.encode(picture.bytes(), request);
    if (made instanceof Refused<List<EncodedObject>> refused) {
      ledger.intents().abandon(picture.hash(), decision.decidedBy(), refused.reason());
      return refused.as();
    }
    List<KeptObject> kept = new ArrayList<>();
    for (EncodedObject object : made.orThrow()) {
      Outcome<KeptObject> written = write(object, picture);
      if (written instanceof Refused<KeptObject> refused) {
        return refused.as();
      }
      kept.add(written.orThrow());
    }
    EncodedObject face = made.orThrow().get(made.orThrow().size() - 1);
    IndexRecord record =
        Descriptions.filed(
            picture.hash(),
            practice.store().ids().of(picture.hash()),
            face.identity().sopInstanceUid(),
            picture.facts(),
            decision);
    ledger.kept().keep(picture.hash(), kept, IndexRecordJson.write(record));
    return Outcome.done(report(picture, decision, laid, face));
  }

  private Outcome<KeptObject> write(EncodedObject object, Picture picture) throws IOException {
    String uid = object.identity().sopInstanceUid();
    return practice
        .store()
        .objects()
        .putIfAbsent(uid, object.toByteArray())
        .then(put -> proved(object, picture));
  }

  private Outcome<KeptObject> proved(EncodedObject object, Picture picture) {
    byte[] fromDisk = readBack(object.identity().sopInstanceUid());
    return ObjectProof.prove(fromDisk, picture.bytes(), object)
        .map(
            proof ->
                new KeptObject(
                    object.identity().sopInstanceUid(),
                    object.hash(),
                    object.pictureHash(),
                    fromDisk.length,
                    object.trimmedColumns(),
                    object.trimmedRows()));
  }

  private byte[] readBack(String uid) {
    try {
      return practice.store().objects().get(uid).orElse(new byte[0]);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private static Turn sheet(Picture picture) {
    Integer exif = picture.facts().orientation();
    return exif == null ? Turn.NONE : Turn.ofExif(exif);
  }

  private static Intent frame(List<Intent> intents) {
    return intents.stream().filter(one -> one.role() == Role.FRAME).findFirst().orElseThrow();
  }

  private static ObjectIdentity identity(List<Intent> intents, Role role) {
    Intent intent = intents.stream().filter(one -> one.role() == role).findFirst().orElseThrow();
    return new ObjectIdentity(
        intent.sopUid(),
        intent.studyUid(),
        intent.seriesUid(),
        intent.seriesNumber(),
        intent.instanceNumber());
  }

  private FiledPhoto report(Picture picture, Decision decision, Laid laid, EncodedObject face) {
    List<String> remarks = new ArrayList<>();
    addUnlessEmpty(remarks, TurnWords.of(laid.turn()));
    if (face.cropWords() != null) {
      remarks.add("cropped, whole frame kept");
    }
    if (face.trimmedColumns() + face.trimmedRows() > 0) {
      remarks.add(
          "dropped at the edge: "
              + face.trimmedColumns()
              + " columns, "
              + face.trimmedRows()
              + " rows");
    }
    return new FiledPhoto(
        practice.store().ids().of(picture.hash()),
        picture.name(),
        Descriptions.name(decision.visit().patient().name()),
        decision.view().name(),
        decision.teeth().isEmpty() ? "" : decision.teeth().words(),
        remarks);
  }

  private static void addUnlessEmpty(List<String> to, @Nullable String text) {
    if (text != null && !text.isEmpty()) {
      to.add(text);
    }
  }
}
