package org.vestibule.flow;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.Decision;
import org.vestibule.base.ContentHash;
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
import org.vestibule.intake.Traces;
import org.vestibule.jpeg.SoundScan;
import org.vestibule.quality.QualityAdvice;
import org.vestibule.quality.QualityFinding;
import org.vestibule.store.index.IndexRecordJson;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.KeptObject;
import org.vestibule.store.ledger.Ledger;
import org.vestibule.store.objects.Put;

/**
 * Files one photograph: intent in the ledger, objects made, written, read back and proved, then
 * kept, frame and crop in one transaction. Whoever calls holds the run lock. Making and proving
 * touch neither ledger nor disk but for reading, so that several photographs can be made and proved
 * beside one another; all else is for one thread.
 */
final class Filer {

  private static final String NAME_TAKEN =
      "another file already had the name of its object, and was left as it is";

  /**
   * A photograph to be filed as it was decided and intended.
   *
   * @param another true if its first intent could not become objects
   */
  record Task(
      Picture atHand,
      Decision decision,
      Laid laid,
      Making making,
      List<Intent> intents,
      boolean another) {

    Task instead(List<Intent> anew) {
      return new Task(atHand, decision, laid, making, anew, true);
    }
  }

  /** The objects of a task, which are not yet anywhere. */
  record Made(
      Task task,
      Picture picture,
      List<EncodedObject> objects,
      @Nullable QualityAdvice advice,
      Traces traces) {}

  /** The objects of a task as they stand on the disk, proved. */
  record Proved(Made made, List<KeptObject> kept) {}

  private final Practice practice;
  private final Ledger ledger;
  private final Intentions intentions;
  private final KeptPictures pictures;
  private final Door door;
  private final Encoder encoder = new Encoder(CameraFacts.standard());

  Filer(Practice practice) {
    this.practice = practice;
    this.ledger = practice.store().ledger();
    this.intentions = new Intentions(practice);
    this.pictures = new KeptPictures(practice);
    this.door = new Door(practice);
  }

  /**
   * Files a photograph, or says why its picture can't be. Refused, the intent stands: whoever
   * called takes it back.
   *
   * @param source where the decision comes from, such as {@code manifest}
   * @param why the reason if an earlier decision is corrected
   */
  Outcome<FiledPhoto> file(Picture picture, Decision decision, Laid laid, String source, Why why)
      throws IOException {
    return complete(begin(picture, decision, laid, source, why));
  }

  /** What the objects of a photograph follow from if its filing is begun now. */
  Making making(ContentHash photo) {
    return Making.now(practice.settings(), ledger.intents().of(photo));
  }

  /** Writes down the intent. */
  Task begin(Picture picture, Decision decision, Laid laid, String source, Why why) {
    Making making = making(picture.hash());
    List<Intent> intents =
        ledger.together(
            () -> {
              List<Intent> begun = intentions.begin(picture, decision, making, source, why);
              pictures.made(picture, frame(begun), laid.turn());
              return begun;
            });
    return new Task(picture, decision, laid, making, intents, false);
  }

  /** Makes, writes, proves and keeps what the ledger intends. */
  Outcome<FiledPhoto> complete(Task task) throws IOException {
    Outcome<Made> written = write(make(task));
    return written instanceof Done<Made> done
        ? prove(done.value()).map(this::keep)
        : ((Refused<Made>) written).as();
  }

  /** Makes the objects. */
  Outcome<Made> make(Task task) {
    return task.atHand()
        .by(task.decision())
        .then(
            picture -> {
              FirstSight sight = picture.sight();
              return encoded(task, picture, sight)
                  .map(objects -> made(task, picture, objects, sight));
            })
        .then(
            made ->
                DoorSearch.objection(practice, made)
                    .<Outcome<Made>>map(leak -> leak)
                    .orElseGet(() -> Outcome.done(made)));
  }

  private Made made(Task task, Picture picture, List<EncodedObject> objects, FirstSight sight) {
    Traces traces = task.atHand().isBare() ? Traces.NONE : traces(task.atHand().bytes(), sight);
    QualityAdvice advice =
        PictureAdvice.judge(picture, sight, task.decision(), practice.settings().quality());
    return new Made(task, picture, objects, advice, traces);
  }

  private static Traces traces(byte[] file, FirstSight sight) {
    SoundScan sound = sight.sound();
    return sound != null && sound.maySpeakOf(file)
        ? Traces.of(file, sound.structure())
        : Traces.of(file);
  }

  /**
   * Writes the objects. Where something else has an object's name already, that is left as it is,
   * and the photograph's next revision is made and written instead.
   */
  Outcome<Made> write(Outcome<Made> made) throws IOException {
    Outcome<Made> next = made;
    while (next instanceof Done<Made> done && !written(done.value())) {
      Task task = done.value().task();
      next = make(task.instead(anew(task)));
    }
    return next;
  }

  private List<Intent> anew(Task task) {
    return intentions.anew(
        task.atHand(), task.decision(), task.intents(), task.making(), NAME_TAKEN);
  }

  /** Reads the objects back and compares their pictures with the file's. */
  Outcome<Proved> prove(Made made) throws IOException {
    List<KeptObject> kept = new ArrayList<>();
    for (EncodedObject object : made.objects()) {
      Outcome<KeptObject> proved = proved(object, made.picture());
      if (proved instanceof Refused<KeptObject> refused) {
        return refused.as();
      }
      kept.add(proved.orThrow());
    }
    return Outcome.done(new Proved(made, kept));
  }

  /** Tells the ledger, in one transaction, that the objects are kept and how they look. */
  FiledPhoto keep(Proved proved) {
    Made made = proved.made();
    EncodedObject face = made.objects().get(made.objects().size() - 1);
    PictureAdvice.Kept advice = ledger.together(() -> keep(proved, face));
    practice.audit().filed(made.picture().hash(), made.task().decision().decidedBy());
    return report(made, face, advice.said());
  }

  private PictureAdvice.Kept keep(Proved proved, EncodedObject face) {
    Picture picture = proved.made().picture();
    Decision decision = proved.made().task().decision();
    PictureAdvice.Kept advice =
        new PictureAdvice(practice).keep(picture.hash(), decision, proved.made().advice());
    new KeptTraces(ledger).keep(picture.hash(), proved.made().traces());
    ledger
        .kept()
        .keep(picture.hash(), proved.kept(), description(picture, decision, face, advice.keys()));
    return advice;
  }

  private Outcome<List<EncodedObject>> encoded(Task task, Picture picture, FirstSight sight) {
    Laid laid = task.laid();
    Decision decision = task.decision();
    Turn before = picture.turned().inverse();
    Laid further =
        new Laid(before.then(laid.turn()), laid.shown(), laid.viewModifiers(), laid.because());
    EncodeRequest request =
        new EncodeRequest(
            picture.facts(),
            decision,
            further,
            before.then(Turn.asShown(picture.facts().orientation())),
            identity(task.intents(), Role.FRAME),
            decision.crop() == null ? null : identity(task.intents(), Role.CROP),
            picture.part(),
            task.making().institution(),
            task.making().zone(),
            door.profile(task.making(), decision, task.intents()));
    return picture.isBare()
        ? encoder.encodeAgain(picture.bytes(), picture.profile(), request)
        : encoder.encode(picture.bytes(), request, sight.sound());
  }

  /** Writes the objects; false if something else has the name of one. A bad disk ends the run. */
  private boolean written(Made made) throws IOException {
    Task task = made.task();
    pictures.made(made.picture(), frame(task.intents()), task.laid().turn());
    for (EncodedObject object : made.objects()) {
      String uid = object.identity().sopInstanceUid();
      Outcome<Put> put = practice.store().objects().putIfAbsent(uid, object.shared());
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
    return ObjectProof.prove(fromDisk, picture.bytes(), object, picture.knownWeight())
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

  private String description(
      Picture picture, Decision decision, EncodedObject face, List<String> advice) {
    return IndexRecordJson.write(
        Descriptions.filed(
            picture.hash(),
            practice.store().ids().of(picture.hash()),
            face.identity().sopInstanceUid(),
            picture.facts(),
            decision,
            advice));
  }

  private static Intent frame(List<Intent> intents) {
    return intents.stream().filter(one -> one.role() == Role.FRAME).findFirst().orElseThrow();
  }

  private static ObjectIdentity identity(List<Intent> intents, Role role) {
    return intents.stream().filter(one -> one.role() == role).findFirst().orElseThrow().identity();
  }

  private FiledPhoto report(Made made, EncodedObject face, List<QualityFinding> advice) {
    Task task = made.task();
    Picture picture = made.picture();
    List<String> remarks = new ArrayList<>();
    if (task.another()) {
      remarks.add("under a new identity, since " + NAME_TAKEN);
    }
    if (!picture.part().isEmpty()) {
      remarks.add("not the whole photograph: " + picture.part());
    }
    addUnlessEmpty(remarks, TurnWords.of(task.laid().turn()));
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
            practice.store().ids().of(picture.hash()), picture.name(), task.decision(), remarks)
        .filedBy(frame(task.intents()).decisionId())
        .with(advice);
  }

  private static void addUnlessEmpty(List<String> to, @Nullable String text) {
    if (text != null && !text.isEmpty()) {
      to.add(text);
    }
  }
}
