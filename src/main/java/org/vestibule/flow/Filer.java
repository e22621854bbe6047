package org.vestibule.flow;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.Decision;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
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
import org.vestibule.store.index.IndexRecordJson;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.KeptObject;
import org.vestibule.store.ledger.Ledger;
import org.vestibule.store.objects.Put;

/**
 * Files one photograph: intent in the ledger, objects made, written, read back and proved, then
 * kept, frame and crop in one transaction. Whoever calls holds the run lock.
 */
final class Filer {

  private static final String NAME_TAKEN =
      "another file already had the name of its object, and was left as it is";

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
   * Files a photograph, or says why its picture can't be. Refused, the intent stands: whoever
   * called takes it back.
   *
   * @param source where the decision comes from, such as {@code manifest}
   * @param why the reason if an earlier decision is corrected; else empty
   */
  Outcome<FiledPhoto> file(Picture picture, Decision decision, Laid laid, String source, String why)
      throws IOException {
    List<Intent> intents = intentions.begin(picture, decision, source, why);
    return complete(picture, decision, laid, Making.now(practice.settings()), intents);
  }

  /**
   * Makes, writes, proves and keeps what the ledger intends. Where something else has an object's
   * name already, that is left as it is, and the photograph's next revision is begun instead.
   */
  Outcome<FiledPhoto> complete(
      Picture atHand, Decision decision, Laid laid, Making making, List<Intent> intended)
      throws IOException {
    Outcome<Picture> filed = atHand.by(decision);
    if (!(filed instanceof Done<Picture> found)) {
      return ((Refused<Picture>) filed).as();
    }
    Picture picture = found.value();
    List<Intent> intents = intended;
    List<String> remarks = List.of();
    Outcome<List<EncodedObject>> made = make(picture, decision, laid, making, intents);
    while (made instanceof Done<List<EncodedObject>> done && !written(done.value())) {
      intents = intentions.anew(picture, decision, intents, making, NAME_TAKEN);
      remarks = List.of("under a new identity, since " + NAME_TAKEN);
      made = make(picture, decision, laid, making, intents);
    }
    if (made instanceof Refused<List<EncodedObject>> refused) {
      return refused.as();
    }
    List<KeptObject> kept = new ArrayList<>();
    for (EncodedObject object : made.orThrow()) {
      Outcome<KeptObject> proved = proved(object, picture);
      if (proved instanceof Refused<KeptObject> refused) {
        return refused.as();
      }
      kept.add(proved.orThrow());
    }
    EncodedObject face = made.orThrow().get(made.orThrow().size() - 1);
    ledger.kept().keep(picture.hash(), kept, description(picture, decision, face));
    return Outcome.done(report(picture, decision, laid, face, remarks));
  }

  private Outcome<List<EncodedObject>> make(
      Picture picture, Decision decision, Laid laid, Making making, List<Intent> intents) {
    new KeptPictures(practice).made(picture, frame(intents), laid.turn());
    Turn before = picture.turned().inverse();
    Laid further =
        new Laid(before.then(laid.turn()), laid.shown(), laid.viewModifiers(), laid.because());
    EncodeRequest request =
        new EncodeRequest(
            picture.facts(),
            decision,
            further,
            before.then(Turn.asShown(picture.facts().orientation())),
            identity(intents, Role.FRAME),
            decision.crop() == null ? null : identity(intents, Role.CROP),
            picture.part(),
            making.institution(),
            making.zone());
    return picture.isBare()
        ? encoder.encodeAgain(picture.bytes(), picture.profile(), request)
        : encoder.encode(picture.bytes(), request);
  }

  /** Writes the objects; false if something else has the name of one. A bad disk ends the run. */
  private boolean written(List<EncodedObject> objects) throws IOException {
    for (EncodedObject object : objects) {
      String uid = object.identity().sopInstanceUid();
      Outcome<Put> put = practice.store().objects().putIfAbsent(uid, object.toByteArray());
      if (put instanceof Refused<Put> badDisk) {
        throw new IOException(badDisk.sentence());
      }
      if (put.orThrow() == Put.TAKEN) {
        return false;
      }
    }
    return true;
  }

  private Outcome<KeptObject> proved(EncodedObject object, Picture picture) throws IOException {
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

  private byte[] readBack(String uid) throws IOException {
    return practice
        .store()
        .objects()
        .get(uid)
        .orElseThrow(() -> new IOException("an object is gone that was written a moment ago"));
  }

  private String description(Picture picture, Decision decision, EncodedObject face) {
    return IndexRecordJson.write(
        Descriptions.filed(
            picture.hash(),
            practice.store().ids().of(picture.hash()),
            face.identity().sopInstanceUid(),
            picture.facts(),
            decision));
  }

  private static Intent frame(List<Intent> intents) {
    return intents.stream().filter(one -> one.role() == Role.FRAME).findFirst().orElseThrow();
  }

  private static ObjectIdentity identity(List<Intent> intents, Role role) {
    return intents.stream().filter(one -> one.role() == role).findFirst().orElseThrow().identity();
  }

  private FiledPhoto report(
      Picture picture, Decision decision, Laid laid, EncodedObject face, List<String> first) {
    List<String> remarks = new ArrayList<>(first);
    if (!picture.part().isEmpty()) {
      remarks.add("not the whole photograph: " + picture.part());
    }
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
    return FiledPhoto.of(
        practice.store().ids().of(picture.hash()), picture.name(), decision, remarks);
  }

  private static void addUnlessEmpty(List<String> to, @Nullable String text) {
    if (text != null && !text.isEmpty()) {
      to.add(text);
    }
  }
}
