package org.vestibule.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import org.vestibule.flow.ReleaseLook;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes what copies would show, for a person to look at before anything leaves. */
@Command(
    name = "look",
    description = {
      "Write the pictures as copies would hold them, cropped as \"release make\" would crop them.",
      "They are for looking at, within the practice; nothing is released and nothing recorded."
    })
final class ReleaseLookCommand extends PracticeCommand {

  @Parameters(arity = "1..*", paramLabel = "ID", description = "Photographs, as find prints them.")
  private List<String> ids = List.of();

  @Option(
      names = "--crop",
      paramLabel = "ID=L,T,R,B",
      description = "The part that is to leave, as \"release make\" takes it. May be repeated.")
  private Map<String, String> crops = new LinkedHashMap<>();

  @Option(
      names = "--to",
      required = true,
      paramLabel = "FOLDER",
      description = "A new folder. Nothing is overwritten.")
  private String to = "";

  ReleaseLookCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  ExitCode run(Practice practice) throws IOException {
    Path folder = surroundings().path(to);
    Outcome<Integer> written = new ReleaseLook(practice).write(ids, crops, folder);
    if (written instanceof Refused<Integer> refused) {
      return refuse(refused);
    }
    console()
        .say(
            "Wrote "
                + Counted.of(written.orThrow(), "picture")
                + " into "
                + folder.getFileName()
                + ". Nothing was released: look at them, then delete them.");
    return ExitCode.DONE;
  }
}
