package org.vestibule.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.vestibule.check.CheckReport;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Checks VL Photographic files of whatever origin against the standard's table. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    description = {
      "Check VL Photographic files, ours or others', against the standard.",
      "Prints findings in words, never a patient's data. Ends with 1 if a file does not conform."
    })
final class CheckCommand implements Callable<Integer> {

  private final Surroundings surroundings;

  @Parameters(paramLabel = "FILE", arity = "1..*", description = "Files, or folders of .dcm files.")
  private List<String> files = new ArrayList<>();

  @Mixin TraceOption trace = new TraceOption();

  CheckCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() throws IOException {
    boolean all = true;
    for (String written : files) {
      List<Path> found = filesIn(surroundings.path(written));
      if (found.isEmpty()) {
        surroundings.console().complain("vestibule: there is no .dcm file in " + written + ".");
        surroundings.console().complain("  What to do: name the files themselves.");
        return ExitCode.REFUSED.number();
      }
      for (Path file : found) {
        CheckReport report =
            CheckReport.of(String.valueOf(file.getFileName()), Files.readAllBytes(file));
        surroundings.console().say(report.words().stripTrailing());
        all &= report.passes();
      }
    }
    return (all ? ExitCode.DONE : ExitCode.NEEDS_A_PERSON).number();
  }

  private static List<Path> filesIn(Path path) throws IOException {
    if (!Files.isDirectory(path)) {
      return List.of(path);
    }
    try (Stream<Path> inside = Files.walk(path)) {
      return inside.filter(file -> file.toString().endsWith(".dcm")).sorted().toList();
    }
  }
}
