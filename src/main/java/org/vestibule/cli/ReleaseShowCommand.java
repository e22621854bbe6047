package org.vestibule.cli;

import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Releasing;
import org.vestibule.store.ledger.ReleaseRow;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Shows one release: who, for whom, why, which, when. */
@Command(
    name = "show",
    description = {
      "Show a release: who asked, for whom, why, which photographs, when, with what hash.",
      "Here alone a pseudonym leads back to the patient."
    })
final class ReleaseShowCommand extends PracticeCommand {

  @Parameters(paramLabel = "RELEASE", description = "The release, as release list prints it.")
  private String id = "";

  ReleaseShowCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  boolean leavesNoTrace() {
    return true;
  }

  @Override
  ExitCode run(Practice practice) {
    Outcome<ReleaseRow> found = new Releasing(practice).show(id);
    if (found instanceof Refused<ReleaseRow> refused) {
      return refuse(refused);
    }
    ReleaseRow row = found.orThrow();
    console().say("Release " + row.id() + " of " + row.madeOn() + ", " + row.purpose());
    console().say("  for       " + row.recipient());
    console().say("  asked by  " + row.askedBy());
    console().say("  made by   " + row.who());
    console().say("  why       " + row.why());
    console().say("  manifest  " + row.manifestHash());
    row.said().stream()
        .map(said -> said.person() + " on " + said.on())
        .distinct()
        .forEach(line -> console().say("  looked    " + line));
    Releasing.crops(row)
        .forEach((photo, part) -> console().say("  crop      " + photo + " to " + part));
    ReleaseRow.Withdrawn withdrawn = row.withdrawn();
    if (withdrawn != null) {
      console().say("  withdrawn by " + withdrawn.who() + ": " + withdrawn.why());
    }
    Table table = new Table("copy", "photograph", "patient", "pseudonym");
    for (ReleaseRow.Item item : row.items()) {
      table.row(
          item.name(),
          item.hash().substring(0, 10),
          item.patientId(),
          item.pseudonym().isEmpty() ? "-" : item.pseudonym());
    }
    table.lines(2).forEach(console()::say);
    return ExitCode.DONE;
  }
}
