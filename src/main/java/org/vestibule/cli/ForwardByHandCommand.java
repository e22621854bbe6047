package org.vestibule.cli;

import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import org.vestibule.flow.delivering.Undelivered;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A person's word that a correction was made in the archive itself. */
@Command(
    name = "by-hand",
    description = {
      "Say that the archive's people took a corrected photograph's old object out by hand,",
      "because the archive does not take the note about it. What stands behind the note may go then."
    })
final class ForwardByHandCommand extends PersonCommand {

  @Parameters(paramLabel = "ID", description = "The photograph, as find prints it.")
  private String id = "";

  @Option(names = "--to", required = true, paramLabel = "NAME", description = "Which archive.")
  private String to = "";

  @Mixin private ReasonOption reason = new ReasonOption();

  ForwardByHandCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  ExitCode run(Practice practice, String by) {
    Outcome<String> why = reason.words();
    if (why instanceof Refused<String> refused) {
      complain(refused);
      return ExitCode.WRONG_USE;
    }
    Outcome<Integer> done = new Undelivered(practice).takenOutByHand(id, to, by, why.orThrow());
    if (done instanceof Refused<Integer> refused) {
      return refuse(refused);
    }
    console().say("Recorded. The next delivery sends what stood behind the note.");
    return ExitCode.DONE;
  }
}
