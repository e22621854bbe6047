package org.vestibule.cli;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Corrections;
import org.vestibule.flow.FiledPhoto;
import org.vestibule.flow.Practice;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Files waiting photographs by a person's word. */
@Command(
    name = "file",
    description = {
      "File one or several waiting photographs, because a person says what they show.",
      "What is not said is taken from the proposal that \"waiting\" prints."
    })
final class FileCommand extends PersonCommand {

  @Parameters(paramLabel = "ID", arity = "1..*", description = "The photographs, by their ids.")
  private List<String> ids = new ArrayList<>();

  @Mixin private FactsOptions facts = new FactsOptions();

  FileCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  ExitCode run(Practice practice, String by) throws IOException {
    ExitCode end = ExitCode.DONE;
    for (String id : ids) {
      Outcome<FiledPhoto> filed = new Corrections(practice).file(id, facts.words(by));
      if (filed instanceof Refused<FiledPhoto> refused) {
        console().complain(id + ":");
        end = refuse(refused);
      } else {
        console().say(FiledLine.of(filed.orThrow()));
      }
    }
    return end;
  }
}
