package org.vestibule.cli;

import java.io.IOException;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Corrections;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Why;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Takes a photograph out of the record, or off the waiting list. */
@Command(
    name = "reject",
    description = {
      "Take a filed photograph out of search, or a waiting one off the list.",
      "Nothing is deleted: object, file and history stay, with who and why."
    })
final class RejectCommand extends PersonCommand {

  @Parameters(paramLabel = "ID", description = "The photograph, as find or waiting prints it.")
  private String id = "";

  @Mixin private ReasonOption reason = new ReasonOption();

  @Mixin private KindOption kind = new KindOption();

  RejectCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  ExitCode run(Practice practice, String by) throws IOException {
    Outcome<Why> why = kind.of(reason.words());
    if (why instanceof Refused<Why> refused) {
      complain(refused);
      return ExitCode.WRONG_USE;
    }
    Outcome<String> rejected = new Corrections(practice).reject(id, by, why.orThrow());
    if (rejected instanceof Refused<String> refused) {
      return refuse(refused);
    }
    console().say(rejected.orThrow());
    return CopiesOut.tell(practice, id, console());
  }
}
