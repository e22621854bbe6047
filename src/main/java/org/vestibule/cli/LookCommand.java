package org.vestibule.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.look.Look;
import org.vestibule.flow.look.LookRules;
import org.vestibule.flow.look.Looked;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Looks at a folder of photographs and writes a sheet; needs no set-up and changes nothing. */
@Command(
    name = "look",
    mixinStandardHelpOptions = true,
    description = {
      "Look at a folder of photographs: needs no set-up and changes nothing in it.",
      "Writes a page with every picture upright and what hides in each file, and a manifest to"
          + " complete."
    })
final class LookCommand implements Callable<Integer> {

  private final Surroundings surroundings;

  @Parameters(paramLabel = "FOLDER", description = "The folder with the photographs.")
  private String folder = "";

  @Option(
      names = "--to",
      paramLabel = "FOLDER",
      description = "Where page and manifest go; otherwise the folder you are in.")
  private @Nullable String to;

  @Mixin TraceOption trace = new TraceOption();

  LookCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() throws IOException {
    Console console = surroundings.console();
    Path target = to == null ? surroundings.folder() : surroundings.path(to);
    Files.createDirectories(target);
    Outcome<Looked> looked =
        Look.make(
            surroundings.path(folder),
            target.resolve("look.html"),
            target.resolve("manifest.csv"),
            to == null ? LookRules.DEFAULT : LookRules.DEFAULT.inside(),
            surroundings.clock().withZone(surroundings.zone()));
    if (looked instanceof Refused<Looked> refused) {
      console.complain("vestibule: " + refused.reason() + ".");
      console.complain("  What to do: " + Ended.of(refused.advice()));
      return ExitCode.REFUSED.number();
    }
    Looked found = looked.orThrow();
    console.say(
        "Looked at "
            + Counted.of(found.photographs(), "photograph")
            + " in "
            + Counted.of(found.sittings(), "sitting")
            + "; "
            + Counted.of(found.leftOut(), "other file")
            + ", "
            + found.needPerson()
            + " of them worth your attention. Nothing in the folder was changed.");
    console.gap();
    console.say("  look.html     the page: open it in a browser; it needs no network");
    console.say("  manifest.csv  what is known of each photograph; complete it in a spreadsheet");
    console.gap();
    console.wrapped(
        0,
        "Next: fill in visit, view, teeth and mirror for the photographs you want filed, save the"
            + " manifest, and run \"vestibule ingest FOLDER --manifest manifest.csv --by YOUR-NAME\".");
    return ExitCode.DONE.number();
  }
}
