package org.vestibule.cli;

import java.io.IOException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import org.vestibule.flow.keeping.Backup;
import org.vestibule.flow.keeping.BackupReport;
import org.vestibule.flow.keeping.BackupRequest;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Copies the practice's record to another disk. */
@Command(
    name = "backup",
    description = {
      "Copy the record to another disk: ledger, objects, settings and lists, as of one moment.",
      "Others may go on working. Repeated, it copies what is new and keeps older ledgers."
    })
final class BackupCommand extends PracticeCommand {

  @Option(
      names = "--to",
      paramLabel = "FOLDER",
      required = true,
      description = "The backup folder, best on another disk; it is made if it is not there.")
  private String to = "";

  @Option(
      names = "--secret-to",
      paramLabel = "FOLDER",
      description = "Copy the practice's secret there, apart from the backup.")
  private @Nullable String secretTo;

  @Option(
      names = "--keep",
      paramLabel = "N",
      defaultValue = "14",
      description =
          "How many of the newest ledgers stay (${DEFAULT-VALUE}); the last one of each month always"
              + " does.")
  private int keep;

  @Option(
      names = "--reread",
      description = "Read the copies that are there already, too, and make spoilt ones anew.")
  private boolean reread;

  BackupCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  ExitCode run(Practice practice) throws IOException {
    if (keep < 1) {
      console().complain("vestibule: --keep says how many ledgers stay, at least 1.");
      console().complain("  What to do: leave it out, or name a number from 1.");
      return ExitCode.WRONG_USE;
    }
    Path secret = secretTo == null ? null : surroundings().path(secretTo);
    BackupRequest request =
        new BackupRequest(surroundings().path(to), secret, reread, keep, VestibuleCommand.VERSION);
    Outcome<BackupReport> made = Backup.run(practice, request);
    if (made instanceof Refused<BackupReport> refused) {
      return refuse(refused);
    }
    return say(made.orThrow());
  }

  private ExitCode say(BackupReport report) {
    console()
        .wrapped(
            0,
            "Snapshot "
                + report.snapshot()
                + ": the ledger, settings and lists, and "
                + Counted.of(report.objects(), "object")
                + ", "
                + report.copied()
                + " of them copied now.");
    if (report.mended() > 0) {
      console()
          .say(
              "Spoilt in the backup and made anew: " + Counted.of(report.mended(), "object") + ".");
    }
    if (!report.removed().isEmpty()) {
      console().say("Older snapshots removed: " + String.join(", ", report.removed()) + ".");
    }
    console()
        .wrapped(
            0,
            report.secretCopied()
                ? "The practice's secret lies in the other folder. Keep it apart from the backup."
                : "The practice's secret is not in this backup. Without it the photographs can be"
                    + " looked at, but not taken back into a practice that works on: keep a copy"
                    + " apart, with --secret-to.");
    new FindingsPrinter(console()).print(report.findings());
    return report.findings().isEmpty() ? ExitCode.DONE : ExitCode.DAMAGE;
  }
}
