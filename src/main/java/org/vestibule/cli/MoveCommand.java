package org.vestibule.cli;

import java.io.IOException;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Corrections;
import org.vestibule.flow.FiledPhoto;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Why;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Corrects what was filed: another visit, view, teeth or side. */
@Command(
    name = "move",
    description = {
      "Correct a filed photograph: another patient's visit, another view, teeth, mirror or crop.",
      "A new object takes its place; the old one stays, out of search, with who and why."
    })
final class MoveCommand extends PersonCommand {

  @Parameters(paramLabel = "ID", description = "The photograph, as find prints it.")
  private String id = "";

  @Mixin private ReasonOption reason = new ReasonOption();

  @Mixin private KindOption kind = new KindOption();

  @Mixin private FactsOptions facts = new FactsOptions();

  MoveCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  ExitCode run(Practice practice, String by) throws IOException {
    Outcome<Why> why = kind.of(reason.words());
    if (why instanceof Refused<Why> refused) {
      complain(refused);
      return ExitCode.WRONG_USE;
    }
    Outcome<FiledPhoto> moved = new Corrections(practice).move(id, facts.words(by), why.orThrow());
    if (moved instanceof Refused<FiledPhoto> refused) {
      return refuse(refused);
    }
    console().say(FiledLine.of(moved.orThrow()));
    console().say("The earlier object stays in the record, out of search.");
    return CopiesOut.tell(practice, id, console());
  }
}
