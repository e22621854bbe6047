package org.vestibule.cli;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.base.WholeFile;
import org.vestibule.flow.KeptPhoto;
import org.vestibule.flow.Practice;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes a filed photograph as a JPEG. */
@Command(
    name = "export",
    description = {
      "Write a filed photograph as a JPEG: upright, true-handed, not re-encoded.",
      "The file carries no name and no position, but the picture may show a face."
    })
final class ExportCommand extends PracticeCommand {

  @Parameters(paramLabel = "ID", description = "The photograph, as find prints it.")
  private String id = "";

  @Option(
      names = "--to",
      paramLabel = "FILE",
      description = "Where to; otherwise ID.jpg in this folder. Nothing is overwritten.")
  private @Nullable String to;

  ExportCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  ExitCode run(Practice practice) throws IOException {
    Outcome<byte[]> jpeg = new KeptPhoto(practice).jpeg(id);
    if (jpeg instanceof Refused<byte[]> refused) {
      return refuse(refused);
    }
    Path file = surroundings().path(to == null ? id + ".jpg" : to);
    try {
      WholeFile.writeNew(file, jpeg.orThrow());
    } catch (FileAlreadyExistsException e) {
      console().complain("vestibule: " + file.getFileName() + " is already there.");
      console().complain("  What to do: name another file with --to; nothing was overwritten.");
      return ExitCode.REFUSED;
    }
    practice
        .audit()
        .exported(
            practice
                .store()
                .ledger()
                .intents()
                .current(practice.store().ids().find(id).orThrow().hash()),
            String.valueOf(file.getFileName()),
            false,
            "");
    console().say("Wrote " + file.getFileName() + ".");
    return ExitCode.DONE;
  }
}
