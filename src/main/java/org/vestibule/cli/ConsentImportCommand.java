package org.vestibule.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Consenting;
import org.vestibule.flow.Practice;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Records the consents of a list. */
@Command(
    name = "import",
    description = {
      "Record the consents of a CSV list: all of them, or none if a row can't be read.",
      "Columns: patient, issuer, purpose, given, until, face, form, guardian, of age."
    })
final class ConsentImportCommand extends PersonCommand {

  @Parameters(paramLabel = "FILE", description = "The list.")
  private String list = "";

  ConsentImportCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  ExitCode run(Practice practice, String by) throws IOException {
    Path file = surroundings().path(list);
    if (!Files.isRegularFile(file)) {
      return refuse(
          new Refused<>("there is no file " + file.getFileName(), "check the name of the list"));
    }
    Outcome<Integer> taken = new Consenting(practice).addAll(file, by);
    if (taken instanceof Refused<Integer> refused) {
      return refuse(refused);
    }
    console().say("Recorded " + Counted.of(taken.orThrow(), "consent") + ".");
    return ExitCode.DONE;
  }
}
