package org.vestibule.flow;

import java.io.IOException;
import java.util.List;
import org.vestibule.assign.AssignSources;
import org.vestibule.assign.RollAssigner;
import org.vestibule.assign.VisitList;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.intake.Intake;
import org.vestibule.intake.IntakeRules;
import org.vestibule.intake.LeftOut;
import org.vestibule.intake.LeftOutKind;
import org.vestibule.intake.Photo;
import org.vestibule.intake.Roll;
import org.vestibule.store.RunLock;

/**
 * Takes in a folder: what can be filed safely is filed, everything else waits with its reason.
 * Running it again changes nothing that is settled; what a killed run began is completed.
 */
public final class Ingest {

  private final Practice practice;
  private final IngestRequest request;
  private final Progress progress;
  private final Tally tally = new Tally();
  private final FirstSights sights = new FirstSights();

  private Ingest(Practice practice, IngestRequest request, Progress progress) {
    this.practice = practice;
    this.request = request;
    this.progress = progress;
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
    tally.note("the run before this one was interrupted (" + run + ").");
  }

  private Outcome<IngestReport> run() throws IOException {
    Lists lists = new Lists(practice);
    Outcome<AssignSources> usable = lists.usable(request);
    if (usable instanceof Refused<AssignSources> refused) {
      return refused.as();
    }
    CardsOfRoll cards = new CardsOfRoll(practice, sights, !request.dryRun());
    Roll roll =
        Intake.read(
            request.folder(),
            rules(),
            practice.clock(),
            (photo, bytes, before, of) -> {
              progress.at(before, of, photo.arrival().shownName());
              cards.arrived(photo, bytes, progress);
            });
    Outcome<RollAssigner> assigner = lists.forRoll(request, roll, () -> cards.gather(roll), tally);
    if (!(assigner instanceof Done<RollAssigner> ready)) {
      return ((Refused<RollAssigner>) assigner).as();
    }
    try (TakingIn takingIn = new TakingIn(practice, request, sights, tally)) {
      take(roll, ready.value(), takingIn);
    }
    if (!request.dryRun()) {
      practice.audit().told();
      practice.store().followIndex();
    }
    return Outcome.done(tally.report(roll.leftOut(), series()));
  }

  private void take(Roll roll, RollAssigner assigner, TakingIn takingIn) throws IOException {
    if (!request.dryRun()) {
      practice.store().objects().clearInterrupted();
      takingIn.places(roll);
      new BegunBefore(practice, tally).completeAll();
      new RejectionNotes(practice)
          .begun()
          .forEach(missing -> tally.concern(missing.sentence() + "."));
    }
    for (int i = 0; i < roll.photos().size(); i++) {
      if (!progress.mayGoOn()) {
        int left = roll.photos().size() - i;
        tally.note("the time is up: " + left + " of the photographs are left for the next run.");
        break;
      }
      Photo photo = roll.photos().get(i);
      progress.at(i, roll.photos().size(), photo.arrival().shownName());
      takingIn.take(photo, assigner);
    }
    takingIn.finish();
    for (LeftOut file : roll.leftOut()) {
      if (file.kind() == LeftOutKind.HEIC || file.kind() == LeftOutKind.DAMAGED) {
        takingIn.waitUnread(file);
      }
    }
  }

  private List<String> series() {
    return new VisitBook(practice).all() instanceof Done<VisitList> visits
        ? new SeriesGaps(practice).sentences(visits.value())
        : List.of();
  }

  private IntakeRules rules() {
    IntakeRules rules =
        new IntakeRules(practice.settings().settle(), IntakeRules.DEFAULT.largestBytes());
    return request.settle() ? rules : rules.withoutSettling();
  }
}
