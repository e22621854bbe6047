package org.vestibule.cli;

import java.util.List;
import org.vestibule.assign.Disputed;
import org.vestibule.assign.Visit;
import org.vestibule.assign.VisitList;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import org.vestibule.flow.VisitBook;
import picocli.CommandLine.Command;

/** Lists the visits that photographs can be filed under. */
@Command(name = "list", description = "List the visits that photographs can be filed under.")
final class VisitsListCommand extends PracticeCommand {

  VisitsListCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  boolean leavesNoTrace() {
    return true;
  }

  @Override
  ExitCode run(Practice practice) {
    Outcome<VisitList> all = new VisitBook(practice).all();
    if (all instanceof Refused<VisitList> refused) {
      return refuse(refused);
    }
    Table table = new Table("visit", "from", "to", "number", "patient", "referred by");
    for (Visit visit : all.orThrow().visits()) {
      table.row(
          visit.key(),
          Times.words(visit.start()),
          Times.words(visit.end()),
          visit.patient().id(),
          visit.patient().name().replace("^", ", "),
          visit.referrer().isEmpty() ? "-" : visit.referrer().replace("^", ", "));
    }
    if (table.isEmpty()) {
      console().say("No visit is known yet: put a visits.csv into the home folder, or add one.");
    } else {
      table.lines(0).forEach(console()::say);
    }
    List<Disputed> disputed = all.orThrow().disputed();
    if (!disputed.isEmpty()) {
      console().say("");
      console().say("Nothing is filed under these, because list and record disagree:");
      for (Disputed against : disputed) {
        console().wrapped(2, against.visit().key() + ": " + against.sentence() + ".");
        console().wrapped(4, "What to do: " + Ended.of(against.advice()));
      }
      return ExitCode.NEEDS_A_PERSON;
    }
    return ExitCode.DONE;
  }
}
