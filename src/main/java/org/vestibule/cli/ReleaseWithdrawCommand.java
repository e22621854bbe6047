package org.vestibule.cli;

import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Releasing;
import org.vestibule.store.ledger.ReleaseRow;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Takes a release back. */
@Command(
    name = "withdraw",
    description = {
      "Mark a release as taken back: it is not made again.",
      "What is out of the house has to be asked back by you."
    })
final class ReleaseWithdrawCommand extends PersonCommand {

  @Parameters(paramLabel = "RELEASE", description = "The release, as release list prints it.")
  private String id = "";

  @Mixin private ReasonOption reason = new ReasonOption();

  ReleaseWithdrawCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  ExitCode run(Practice practice, String by) {
    Outcome<String> why = reason.words();
    if (why instanceof Refused<String> refused) {
      complain(refused);
      return ExitCode.WRONG_USE;
    }
    Outcome<ReleaseRow> done = new Releasing(practice).withdraw(id, by, why.orThrow());
    if (done instanceof Refused<ReleaseRow> refused) {
      return refuse(refused);
    }
    console()
        .say(
            "Withdrew release "
                + done.orThrow().id()
                + ": ask "
                + done.orThrow().recipient()
                + " for the copies.");
    return ExitCode.DONE;
  }
}
