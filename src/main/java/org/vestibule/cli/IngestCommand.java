package org.vestibule.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Ingest;
import org.vestibule.flow.IngestReport;
import org.vestibule.flow.IngestRequest;
import org.vestibule.flow.Practice;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Takes in a folder of photographs. */
@Command(
    name = "ingest",
    description = {
      "Take in a folder of photographs: file what is surely known, let the rest wait.",
      "The photographs stay where they are. Running it again does nothing twice."
    })
final class IngestCommand extends PersonCommand {

  @Parameters(
      paramLabel = "FOLDER",
      arity = "0..1",
      description = "The folder with the photographs; otherwise the practice's inbox.")
  private @Nullable String folder;

  @Option(
      names = "--manifest",
      paramLabel = "FILE",
      description = "What a person says about each file; otherwise manifest.csv in the folder.")
  private @Nullable String manifest;

  @Option(names = "--dry-run", description = "Only say what would be done; write nothing.")
  private boolean dryRun;

  @Option(names = "--at-once", description = "Take files that were changed a moment ago, too.")
  private boolean atOnce;

  IngestCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  boolean mayBegin() {
    return true;
  }

  @Override
  boolean leavesNoTrace() {
    return dryRun;
  }

  @Override
  ExitCode run(Practice practice, String by) throws IOException {
    Path from = folder == null ? practice.settings().inbox() : surroundings().path(folder);
    if (folder == null && !dryRun) {
      Files.createDirectories(from);
    }
    if (!Files.isDirectory(from)) {
      console().complain("vestibule: there is no folder " + from.getFileName() + ".");
      console().complain("  What to do: check the name, and that the drive is connected.");
      return ExitCode.REFUSED;
    }
    IngestRequest request =
        new IngestRequest(
                from,
                manifest == null ? from.resolve("manifest.csv") : surroundings().path(manifest),
                by,
                dryRun,
                !atOnce)
            .onAllProcessors();
    Outcome<IngestReport> report =
        Ingest.run(
            practice,
            request,
            (done, of, name) -> console().progress((done + 1) + " of " + of + "  " + name));
    console().progressDone();
    if (report instanceof Refused<IngestReport> refused) {
      return refuse(refused);
    }
    IngestPrinter printer = new IngestPrinter(console());
    printer.print(report.orThrow(), dryRun);
    if (traced()) {
      printer.traces(report.orThrow());
    }
    if (!report.orThrow().waiting().isEmpty()) {
      console().say("\"vestibule waiting\" shows again what waits.");
    }
    return report.orThrow().needsPerson() ? ExitCode.NEEDS_A_PERSON : ExitCode.DONE;
  }
}
