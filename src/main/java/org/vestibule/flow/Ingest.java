package org.vestibule.flow;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.vestibule.assign.Assignment;
import org.vestibule.assign.Assignment.Decided;
import org.vestibule.assign.Assignment.Waits;
import org.vestibule.assign.RollAssigner;
import org.vestibule.assign.WaitReason;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.intake.Intake;
import org.vestibule.intake.IntakeRules;
import org.vestibule.intake.LeftOut;
import org.vestibule.intake.LeftOutKind;
import org.vestibule.intake.Photo;
import org.vestibule.intake.Roll;
import org.vestibule.store.RunLock;
import org.vestibule.store.ledger.Ledger;
import org.vestibule.store.ledger.PhotoRow;
import org.vestibule.store.ledger.PhotoState;

/**
 * Takes in a folder: what can be filed safely is filed, everything else waits with its reason.
 * Running it again changes nothing that is settled; what a killed run began is completed.
 */
public final class Ingest {

  private final Practice practice;
  private final IngestRequest request;
  private final Ledger ledger;
  private final Progress progress;
  private final WaitingPhotos waitingPhotos;
  private final SourceFiles sources;
  private final Filer filer;
  private final ShotVersions versions;
  private final ChangedRows changedRows;
  private final List<FiledPhoto> filed = new ArrayList<>();
  private final List<WaitingPhoto> waiting = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();
  private int knownAlready;
  private int completed;
  private int unkept;

  private Ingest(Practice practice, IngestRequest request, Progress progress) {
    this.practice = practice;
    this.request = request;
    this.progress = progress;
    this.ledger = practice.store().ledger();
    this.waitingPhotos = new WaitingPhotos(practice);
    this.sources = new SourceFiles(practice);
    this.filer = new Filer(practice);
    this.versions = new ShotVersions(practice);
    this.changedRows = new ChangedRows(practice);
  }

  /** Runs one ingest; refused if another run is at work or a list can't be used. */
  public static Outcome<IngestReport> run(
      Practice practice, IngestRequest request, Progress progress) throws IOException {
    Ingest ingest = new Ingest(practice, request, progress);
    if (request.dryRun()) {
      return ingest.run();
    }
    Outcome<RunLock> locked = practice.store().lock("ingest");
    if (!(locked instanceof Done<RunLock> free)) {
      return ((Refused<RunLock>) locked).as();
    }
    try (RunLock lock = free.value()) {
      lock.interrupted().ifPresent(ingest::interrupted);
      return ingest.run();
    }
  }

  private void interrupted(String run) {
    notes.add("the run before this one was interrupted (" + run + ").");
  }

  private Outcome<IngestReport> run() throws IOException {
    Roll roll = Intake.read(request.folder(), rules(), practice.clock());
    Outcome<RollAssigner> assigner = new Lists(practice).forRoll(request, roll, notes);
    if (!(assigner instanceof Done<RollAssigner> ready)) {
      return ((Refused<RollAssigner>) assigner).as();
    }
    if (!request.dryRun()) {
      practice.store().objects().clearInterrupted();
    }
    for (int i = 0; i < roll.photos().size(); i++) {
      Photo photo = roll.photos().get(i);
      progress.at(i, roll.photos().size(), photo.arrival().shownName());
      take(photo, ready.value());
    }
    for (LeftOut file : roll.leftOut()) {
      if (file.kind() == LeftOutKind.HEIC || file.kind() == LeftOutKind.DAMAGED) {
        waitUnread(file);
      }
    }
    if (!request.dryRun()) {
      practice.store().followIndex();
    }
    return Outcome.done(
        new IngestReport(filed, waiting, roll.leftOut(), knownAlready, completed, unkept, notes));
  }

  /** A photograph that can't be taken as it is waits all the same: it may be the only one. */
  private void waitUnread(LeftOut file) throws IOException {
    ContentHash hash = file.hash();
    if (hash == null || request.dryRun() || state(hash) == PhotoState.REJECTED) {
      return;
    }
    sources.seen(request.folder().resolve(file.name()), file, hash);
    CaptureFacts facts = file.facts() == null ? CaptureFacts.NONE : file.facts();
    waitingPhotos.put(
        hash,
        List.of(new WaitingPhoto.Reason(file.kind().name(), file.reason(), file.advice())),
        Map.of(),
        Descriptions.waiting(hash, practice.store().ids().of(hash), facts));
  }

  private PhotoState state(ContentHash hash) {
    return ledger.photos().find(hash).map(PhotoRow::state).orElse(PhotoState.SEEN);
  }

  private IntakeRules rules() {
    IntakeRules rules =
        new IntakeRules(practice.settings().settle(), IntakeRules.DEFAULT.largestBytes());
    return request.settle() ? rules : rules.withoutSettling();
  }

  private void take(Photo photo, RollAssigner assigner) throws IOException {
    ContentHash hash = photo.arrival().hash();
    PhotoState state = state(hash);
    if (!request.dryRun()) {
      sources.seen(photo);
    }
    switch (state) {
      case KEPT -> {
        knownAlready++;
        changedRows.note(photo, assigner).ifPresent(notes::add);
      }
      case REJECTED -> knownAlready++;
      case INTENDED -> complete(photo);
      case SEEN, WAITING -> assign(photo, assigner.assign(photo, versionFiled(photo)));
    }
  }

  private List<WaitReason> versionFiled(Photo photo) {
    return versions
        .filed(photo.arrival().hash(), photo.facts())
        .map(WaitReason::versionFiled)
        .map(List::of)
        .orElse(List.of());
  }

  /** What a killed run intended is made now, by the decision that was written down. */
  private void complete(Photo photo) throws IOException {
    if (request.dryRun()) {
      notes.add(photo.arrival().shownName() + " was begun by an interrupted run.");
      return;
    }
    Optional<Picture> picture = picture(photo);
    if (picture.isEmpty()) {
      return;
    }
    Outcome<FiledPhoto> done = new Resumption(practice, filer).complete(picture.get());
    if (done instanceof Done<FiledPhoto> finished) {
      filed.add(finished.value());
      completed++;
    } else {
      notFiled(photo, Map.of(), (Refused<FiledPhoto>) done);
    }
  }

  private void assign(Photo photo, Assignment assignment) throws IOException {
    if (assignment instanceof Decided decided) {
      file(photo, decided);
    } else if (assignment instanceof Waits waits) {
      wait(photo, ProposalWords.of(waits.proposal()), ProposalWords.reasons(waits.reasons()));
    }
  }

  private void file(Photo photo, Decided decided) throws IOException {
    if (request.dryRun()) {
      filed.add(wouldFile(photo, decided));
      return;
    }
    Optional<Picture> picture = picture(photo);
    if (picture.isEmpty()) {
      return;
    }
    Outcome<FiledPhoto> done =
        filer.file(picture.get(), decided.decision(), decided.laid(), "ingest", "");
    if (done instanceof Done<FiledPhoto> finished) {
      filed.add(finished.value());
    } else {
      notFiled(
          photo,
          ProposalWords.of(decided.decision(), photo.facts().orientation()),
          (Refused<FiledPhoto>) done);
    }
  }

  private static FiledPhoto wouldFile(Photo photo, Decided decided) {
    return new FiledPhoto(
        photo.arrival().hash().brief(),
        photo.arrival().shownName(),
        Descriptions.name(decided.decision().visit().patient().name()),
        decided.decision().view().name(),
        decided.decision().teeth().isEmpty() ? "" : decided.decision().teeth().words(),
        TurnWords.of(decided.laid().turn()).isEmpty()
            ? List.of()
            : List.of(TurnWords.of(decided.laid().turn())));
  }

  /** The picture as its file holds it; empty, with a note, if the file changed or went away. */
  private Optional<Picture> picture(Photo photo) {
    Outcome<byte[]> bytes = photo.bytes();
    if (bytes instanceof Done<byte[]> done) {
      return Optional.of(
          Picture.ofFile(
              photo.arrival().hash(), photo.arrival().shownName(), photo.facts(), done.value()));
    }
    notes.add(((Refused<byte[]>) bytes).sentence() + ".");
    return Optional.empty();
  }

  /** It waits, unless its objects could not be written: then the next run tries again. */
  private void notFiled(Photo photo, Map<String, String> proposal, Refused<FiledPhoto> refused) {
    if (state(photo.arrival().hash()) == PhotoState.INTENDED) {
      unkept++;
      notes.add(photo.arrival().shownName() + ": " + refused.sentence() + ".");
    } else {
      wait(
          photo,
          proposal,
          List.of(new WaitingPhoto.Reason("PICTURE", refused.reason(), refused.advice())));
    }
  }

  private void wait(Photo photo, Map<String, String> proposal, List<WaitingPhoto.Reason> reasons) {
    ContentHash hash = photo.arrival().hash();
    if (!request.dryRun()) {
      String id = practice.store().ids().of(hash);
      waitingPhotos.put(hash, reasons, proposal, Descriptions.waiting(hash, id, photo.facts()));
    }
    waiting.add(
        new WaitingPhoto(
            hash,
            request.dryRun() ? hash.brief() : practice.store().ids().of(hash),
            photo.arrival().shownName(),
            photo.facts().takenAt(),
            null,
            proposal,
            reasons));
  }
}
