package org.vestibule.flow;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.vestibule.assign.Assignment;
import org.vestibule.assign.Assignment.Decided;
import org.vestibule.assign.Assignment.SetAside;
import org.vestibule.assign.Assignment.Waits;
import org.vestibule.assign.RollAssigner;
import org.vestibule.assign.WaitReason;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.card.CardSighting;
import org.vestibule.encode.RejectionReason;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.intake.LeftOut;
import org.vestibule.intake.Photo;
import org.vestibule.intake.Roll;
import org.vestibule.store.ledger.Ledger;
import org.vestibule.store.ledger.PhotoRow;
import org.vestibule.store.ledger.PhotoState;

/**
 * Takes in single photographs of a folder: files one, or lets it wait. A photograph on which the
 * program fails waits too, and never stops the others.
 */
final class TakingIn implements FilingLine.Ends, AutoCloseable {

  private final Practice practice;
  private final IngestRequest request;
  private final FirstSights sights;
  private final Tally tally;
  private final Ledger ledger;
  private final WaitingPhotos waitingPhotos;
  private final SourceFiles sources;
  private final Filer filer;
  private final FilingLine line;
  private final Setback setback;
  private final ShotVersions versions;
  private final ChangedRows changedRows;
  private final RestoredTwins twins;

  TakingIn(Practice practice, IngestRequest request, FirstSights sights, Tally tally) {
    this.sights = sights;
    this.practice = practice;
    this.request = request;
    this.tally = tally;
    this.ledger = practice.store().ledger();
    this.waitingPhotos = new WaitingPhotos(practice);
    this.sources = new SourceFiles(practice);
    this.filer = new Filer(practice);
    this.line = new FilingLine(filer, request.beside(), this);
    this.setback = new Setback(practice);
    this.versions = new ShotVersions(practice);
    this.changedRows = new ChangedRows(practice);
    this.twins = new RestoredTwins(practice);
  }

  /** Records where photographs lie now whose filing was begun, so that it can be completed. */
  void places(Roll roll) {
    for (Photo photo : roll.photos()) {
      if (state(photo.arrival().hash()) == PhotoState.INTENDED) {
        sources.seen(photo);
      }
    }
  }

  /** Takes in one photograph. */
  void take(Photo photo, RollAssigner assigner) throws IOException {
    try {
      settle(photo, assigner);
    } catch (RuntimeException | StackOverflowError | OutOfMemoryError failure) {
      if (Setback.isMachine(failure)) {
        throw failure;
      }
      failed(photo, failure);
    }
  }

  private void settle(Photo photo, RollAssigner assigner) throws IOException {
    ContentHash hash = photo.arrival().hash();
    PhotoState state = state(hash);
    if (tally.hasSettled(hash)) {
      return;
    }
    if (!request.dryRun() && !sights.isRecorded(hash)) {
      sources.seen(photo);
    }
    switch (state) {
      case KEPT -> {
        tally.known();
        changedRows.note(photo, assigner).ifPresent(tally::note);
      }
      case REJECTED -> tally.known();
      case INTENDED ->
          tally.note(photo.arrival().shownName() + " was begun by an interrupted run.");
      case SEEN, WAITING -> {
        if (!isRestored(photo, state)) {
          assign(photo, assigner.assign(photo, versionFiled(photo)));
        }
      }
    }
  }

  /**
   * True if the photograph was entered again from its object, by a hash that stands for its own.
   */
  private boolean isRestored(Photo photo, PhotoState state) {
    if (twins.none()) {
      return false;
    }
    ContentHash hash = photo.arrival().hash();
    Optional<ContentHash> restored =
        photo.bytes() instanceof Done<byte[]> file
            ? twins.of(hash, photo.facts(), file.value())
            : Optional.empty();
    if (restored.isEmpty()) {
      return false;
    }
    String said =
        "it is photograph "
            + practice.store().ids().of(restored.get())
            + ", which was entered again from its object";
    if (!request.dryRun() && state == PhotoState.WAITING) {
      ledger.waiting().dismiss(hash, request.by(), said);
    } else if (!request.dryRun()) {
      ledger.corrections().reject(hash, request.by(), said, RejectionReason.UNSAFE);
    }
    tally.note(photo.arrival().shownName() + " is not filed again: " + said + ".");
    return true;
  }

  private List<WaitReason> versionFiled(Photo photo) {
    return versions
        .filed(photo.arrival().hash(), photo.facts())
        .map(WaitReason::versionFiled)
        .map(List::of)
        .orElse(List.of());
  }

  private PhotoState state(ContentHash hash) {
    return ledger.photos().find(hash).map(PhotoRow::state).orElse(PhotoState.SEEN);
  }

  @Override
  public void failed(Photo photo, Throwable failure) {
    tally.defect(photo.arrival().shownName(), failure);
    ContentHash hash = photo.arrival().hash();
    Map<String, String> said = new Resumption(practice, filer).said(hash, photo.facts());
    WaitingPhoto.Reason reason =
        request.dryRun()
            ? Setback.defect(failure)
            : setback.failed(hash, photo.facts(), said, request.by(), failure);
    PhotoState state = state(hash);
    if (state != PhotoState.KEPT && state != PhotoState.REJECTED) {
      tally.waits(waiting(photo, said, List.of(reason)));
    }
  }

  private void assign(Photo photo, Assignment assignment) throws IOException {
    if (assignment instanceof Decided decided) {
      file(photo, decided);
    } else if (assignment instanceof SetAside card) {
      setAside(photo, card);
    } else if (assignment instanceof Waits waits) {
      wait(photo, ProposalWords.of(waits.proposal()), ProposalWords.reasons(waits.reasons()));
    }
  }

  /** A card that waited, because it could not be read before, does so no longer. */
  private void setAside(Photo photo, SetAside card) {
    ContentHash hash = photo.arrival().hash();
    if (!request.dryRun() && state(hash) == PhotoState.WAITING) {
      ledger.waiting().dismiss(hash, request.by(), card.sentence());
    }
    tally.card(hash, new Aside(shownId(hash), photo.arrival().shownName(), card.sentence()));
  }

  private String shownId(ContentHash hash) {
    return request.dryRun() ? hash.brief() : practice.store().ids().of(hash);
  }

  private void file(Photo photo, Decided decided) throws IOException {
    Optional<Refused<FiledPhoto>> objection =
        new Door(practice).objection(filer.making(photo.arrival().hash()), decided.decision());
    if (objection.isPresent()) {
      wait(
          photo,
          ProposalWords.of(decided.decision(), photo.facts().orientation()),
          List.of(
              new WaitingPhoto.Reason("FACE", objection.get().reason(), objection.get().advice())));
      return;
    }
    if (request.dryRun()) {
      tally.filed(wouldFile(photo, decided));
      return;
    }
    ContentHash hash = photo.arrival().hash();
    Outcome<byte[]> bytes = sights.bytes(photo);
    if (!(bytes instanceof Done<byte[]> found)) {
      tally.concern(((Refused<byte[]>) bytes).sentence() + ".");
      return;
    }
    line.add(
        photo,
        decided,
        Picture.ofFile(hash, photo.arrival().shownName(), photo.facts(), found.value())
            .seen(sights.of(hash)));
  }

  /** Ends the photographs whose filing was begun. */
  void finish() throws IOException {
    line.finish();
  }

  @Override
  public void close() {
    line.close();
  }

  @Override
  public void ended(Photo photo, Decided decided, Outcome<FiledPhoto> outcome) {
    if (outcome instanceof Done<FiledPhoto> finished) {
      tally.filed(finished.value());
      return;
    }
    Map<String, String> proposal =
        ProposalWords.of(decided.decision(), photo.facts().orientation());
    WaitingPhoto.Reason reason =
        setback.refused(
            photo.arrival().hash(),
            photo.facts(),
            proposal,
            request.by(),
            (Refused<FiledPhoto>) outcome);
    tally.waits(waiting(photo, proposal, List.of(reason)));
  }

  private static FiledPhoto wouldFile(Photo photo, Decided decided) {
    String turn = TurnWords.of(decided.laid().turn());
    return FiledPhoto.of(
        photo.arrival().hash().brief(),
        photo.arrival().shownName(),
        decided.decision(),
        turn.isEmpty() ? List.of() : List.of(turn));
  }

  private void wait(Photo photo, Map<String, String> proposal, List<WaitingPhoto.Reason> reasons) {
    if (!request.dryRun()) {
      ContentHash hash = photo.arrival().hash();
      String id = practice.store().ids().of(hash);
      PictureAdvice advice = new PictureAdvice(practice);
      Optional<String> looked =
          advice.lookWaiting(hash, photo.facts(), sights.of(hash), photo::bytes);
      ledger.together(
          () -> {
            looked.ifPresent(found -> advice.keepWaiting(hash, found));
            return waitingPhotos.put(
                hash, reasons, proposal, Descriptions.waiting(hash, id, photo.facts()));
          });
    }
    tally.waits(waiting(photo, proposal, reasons));
  }

  private WaitingPhoto waiting(
      Photo photo, Map<String, String> proposal, List<WaitingPhoto.Reason> reasons) {
    ContentHash hash = photo.arrival().hash();
    return new WaitingPhoto(
        hash,
        shownId(hash),
        photo.arrival().shownName(),
        photo.facts().takenAt(),
        null,
        proposal,
        reasons,
        new PictureAdvice(practice).waiting(hash));
  }

  /** A photograph that can't be taken as it is waits all the same: it may be the only one. */
  void waitUnread(LeftOut file) throws IOException {
    ContentHash hash = file.hash();
    if (hash == null || request.dryRun() || state(hash) == PhotoState.REJECTED) {
      return;
    }
    sources.seen(request.folder().resolve(file.name()), file, hash);
    new CardSightings(practice)
        .keep(hash, CardSighting.Refused.unopened(file.reason(), file.advice()));
    CaptureFacts facts = file.facts() == null ? CaptureFacts.NONE : file.facts();
    waitingPhotos.put(
        hash,
        List.of(new WaitingPhoto.Reason(file.kind().name(), file.reason(), file.advice())),
        Map.of(),
        Descriptions.waiting(hash, practice.store().ids().of(hash), facts));
  }
}
