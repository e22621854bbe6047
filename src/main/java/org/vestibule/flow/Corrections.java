package org.vestibule.flow;

import static java.util.Objects.requireNonNull;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.vestibule.assign.Assignment.Decided;
import org.vestibule.assign.Decision;
import org.vestibule.assign.DecisionRecord;
import org.vestibule.assign.PersonWords;
import org.vestibule.assign.PhotoFact;
import org.vestibule.assign.WaitReason;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.encode.RejectionReason;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.store.PhotoRef;
import org.vestibule.store.RunLock;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.Ledger;
import org.vestibule.store.ledger.PhotoRow;
import org.vestibule.store.ledger.PhotoState;
import org.vestibule.store.ledger.WaitingRow;

/**
 * What a person does about single photographs: files one that waits, corrects one that is filed,
 * takes one out. Every step is recorded with the person's name.
 */
public final class Corrections {

  private final Practice practice;
  private final Ledger ledger;
  private final SourceFiles sources;

  public Corrections(Practice practice) {
    this.practice = practice;
    this.ledger = practice.store().ledger();
    this.sources = new SourceFiles(practice);
  }

  /** Files a photograph that waits, by what a person says and what was proposed. */
  public Outcome<FiledPhoto> file(String id, PersonWords said) throws IOException {
    return locked("file", id, LookedAt.NOW, photo -> fileOne(photo, said));
  }

  /** Corrects a filed photograph; what is not said stays as it was. */
  public Outcome<FiledPhoto> move(String id, PersonWords said, Why why) throws IOException {
    return move(id, said, why, LookedAt.NOW);
  }

  /** The same, if what is filed is what was looked at. */
  Outcome<FiledPhoto> move(String id, PersonWords said, Why why, LookedAt seen) throws IOException {
    return locked("move", id, seen, photo -> moveOne(photo, said, why));
  }

  /** Takes a photograph out of the record or off the waiting list; says what was done. */
  public Outcome<String> reject(String id, String by, Why why) throws IOException {
    return reject(id, by, why, LookedAt.NOW);
  }

  /** The same, if what is filed is what was looked at. */
  Outcome<String> reject(String id, String by, Why why, LookedAt seen) throws IOException {
    return locked("reject", id, seen, photo -> rejectOne(photo, by, why));
  }

  /**
   * Takes back what a person filed, so that it waits again with what was said of it. The object and
   * its history stay in the record; a destination that has it is told as of any correction.
   */
  Outcome<String> takeBack(String id, String by, Why why, LookedAt seen) throws IOException {
    return locked("take back", id, seen, photo -> new TakingBack(practice).one(photo, by, why));
  }

  @FunctionalInterface
  private interface Step<T> {
    Outcome<T> on(ContentHash photo) throws IOException;
  }

  @SuppressWarnings("try") // the lock is held, not used
  private <T> Outcome<T> locked(String what, String id, LookedAt seen, Step<T> step)
      throws IOException {
    Outcome<RunLock> locked = practice.store().lock(what);
    if (!(locked instanceof Done<RunLock> free)) {
      return ((Refused<RunLock>) locked).as();
    }
    try (RunLock lock = free.value()) {
      Outcome<PhotoRef> found = practice.store().ids().find(id);
      if (!(found instanceof Done<PhotoRef> photo)) {
        return ((Refused<PhotoRef>) found).as();
      }
      Optional<Refused<T>> another = seen.objection(photo.value().hash(), practice);
      if (another.isPresent()) {
        return another.get();
      }
      Outcome<T> done = step.on(photo.value().hash());
      if (done instanceof Done<T>) {
        new RejectionNotes(practice).about(photo.value().hash());
      }
      practice.audit().told();
      practice.store().followIndex();
      return done;
    }
  }

  private Outcome<FiledPhoto> fileOne(ContentHash hash, PersonWords said) throws IOException {
    if (!ledger.intents().current(hash).isEmpty()) {
      return Outcome.refused("this photograph is filed already", "correct it with move");
    }
    if (!said.says(PhotoFact.CROP) && new CardSightings(practice).isCard(hash)) {
      return Outcome.refused(
          "a card is in this photograph, and cards are never filed",
          "if it shows more than the card, file it with a crop that leaves the card out");
    }
    CaptureFacts facts = sources.facts(hash);
    Optional<WaitReason> version =
        new ShotVersions(practice).filed(hash, facts).map(WaitReason::versionFiled);
    if (version.isPresent()) {
      return Outcome.refused(version.get().sentence(), version.get().advice());
    }
    Outcome<Decided> decided =
        new Lists(practice).byPerson(facts, ProposalWords.completed(said, proposal(hash, facts)));
    Outcome<byte[]> bytes = sources.bytes(hash);
    if (!(decided instanceof Done<Decided> known)) {
      return ((Refused<Decided>) decided).as();
    }
    if (!(bytes instanceof Done<byte[]> source)) {
      return ((Refused<byte[]>) bytes).as();
    }
    Optional<ContentHash> twin = new RestoredTwins(practice).of(hash, facts, source.value());
    if (twin.isPresent()) {
      return Outcome.refused(
          "this photograph is filed already, as "
              + practice.store().ids().of(twin.get())
              + ", entered again from its object",
          "correct that one with move, and take this one off the list with reject");
    }
    Picture picture = Picture.ofFile(hash, sources.name(hash), facts, source.value());
    return filed(picture, known.value(), Why.NOTHING);
  }

  /** What was proposed while it waited; else what an interrupted run was about to file. */
  private Map<String, String> proposal(ContentHash hash, CaptureFacts facts) {
    Optional<WaitingRow> waiting = ledger.waiting().find(hash);
    if (waiting.isPresent()) {
      return WaitingJson.proposal(waiting.get().proposal());
    }
    return resumption().said(hash, facts);
  }

  private Resumption resumption() {
    return new Resumption(practice, new Filer(practice));
  }

  /** Files it; a picture that can't be filed goes on waiting, with what the person said. */
  private Outcome<FiledPhoto> filed(Picture picture, Decided decided, Why why) throws IOException {
    Decision decision = decided.decision();
    Filer filer = new Filer(practice);
    Optional<Refused<FiledPhoto>> objection =
        new Door(practice).objection(filer.making(picture.hash()), decision);
    if (objection.isPresent()) {
      return objection.get();
    }
    Map<String, String> said = ProposalWords.of(decision, picture.facts().orientation());
    Setback setback = new Setback(practice);
    String who = decision.decidedBy();
    try {
      Outcome<FiledPhoto> filed = filer.file(picture, decision, decided.laid(), "person", why);
      if (filed instanceof Refused<FiledPhoto> refused) {
        setback.refused(picture.hash(), picture.facts(), said, who, refused);
      }
      return filed;
    } catch (RuntimeException | OutOfMemoryError | StackOverflowError failure) {
      if (!Setback.isMachine(failure)) {
        setback.failed(picture.hash(), picture.facts(), said, who, failure);
      }
      throw failure;
    }
  }

  private Outcome<FiledPhoto> moveOne(ContentHash hash, PersonWords said, Why why)
      throws IOException {
    List<Intent> current = ledger.intents().current(hash);
    if (current.isEmpty()) {
      return Outcome.refused(
          "this photograph is not filed, so there is nothing to correct",
          "file it with file, if it waits");
    }
    if (said.isBlank()) {
      return Outcome.refused(
          "nothing was said that differs from what is filed",
          "say what is to be corrected, such as --visit, --view, --teeth or --mirror");
    }
    Outcome<Decision> before = resumption().decision(current.get(0).decisionId());
    if (!(before instanceof Done<Decision> old)) {
      return ((Refused<Decision>) before).as();
    }
    CaptureFacts facts = sources.facts(hash);
    boolean lookedAtAsThisView = old.value().seen() && !said.says(PhotoFact.VIEW);
    PersonWords words =
        ProposalWords.completed(
            lookedAtAsThisView ? said.seenByPerson() : said,
            ProposalWords.of(old.value(), facts.orientation()));
    Outcome<Decided> decided = new Lists(practice).byPerson(facts, words);
    if (!(decided instanceof Done<Decided> known)) {
      return ((Refused<Decided>) decided).as();
    }
    Decision now = known.value().decision();
    if (now.withoutWho().equals(old.value().withoutWho())) {
      return Outcome.refused(
          "what was said is what is filed already", "nothing needs to be corrected");
    }
    Outcome<Picture> picture = new KeptPictures(practice).best(hash, facts, current);
    if (!(picture instanceof Done<Picture> found)) {
      return ((Refused<Picture>) picture).as();
    }
    String follows = ReasonOfMove.of(DecisionRecord.of(old.value()), DecisionRecord.of(now));
    Outcome<FiledPhoto> moved = filed(found.value(), known.value(), why.orElse(follows));
    if (moved instanceof Done<FiledPhoto>) {
      practice.audit().moved(hash, current, now.decidedBy());
    }
    return moved;
  }

  private Outcome<String> rejectOne(ContentHash hash, String by, Why why) throws IOException {
    String id = practice.store().ids().of(hash);
    if (state(hash) == PhotoState.WAITING) {
      ledger.waiting().dismiss(hash, by, why.words());
      return Outcome.done(
          "Photograph " + id + " no longer waits. Its file stays where it is, untouched.");
    }
    List<Intent> before = ledger.intents().current(hash);
    boolean counted = !before.isEmpty();
    String reason = why.orElse(RejectionReason.UNSAFE).reason();
    if (ledger.corrections().reject(hash, by, why.words(), requireNonNull(reason))) {
      practice.audit().accessed(before, 'D', by);
      return Outcome.done(
          counted
              ? "Photograph "
                  + id
                  + " is out of search. Its object and its history stay in the record."
              : "Photograph "
                  + id
                  + " was being filed by a run that was interrupted; it will not be filed."
                  + " Its file stays where it is, untouched.");
    }
    return Outcome.refused(
        "photograph " + id + " is neither filed nor waiting", "nothing needs to be done");
  }

  private PhotoState state(ContentHash hash) {
    return ledger.photos().find(hash).map(PhotoRow::state).orElse(PhotoState.SEEN);
  }
}
