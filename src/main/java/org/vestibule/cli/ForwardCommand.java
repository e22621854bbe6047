package org.vestibule.cli;

import java.io.IOException;
import java.security.SecureRandom;
import java.time.Duration;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import org.vestibule.flow.delivering.Delivering;
import org.vestibule.flow.delivering.DeliveryReport;
import org.vestibule.forward.OutgoingLines;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Delivers to the archives. */
@Command(
    name = "forward",
    description = {
      "Deliver to the archives what is due, and ask them for what they have not confirmed.",
      "Only what an archive has confirmed counts as delivered."
    },
    subcommands = {ForwardListCommand.class, ForwardAgainCommand.class, ForwardByHandCommand.class})
final class ForwardCommand extends PracticeCommand {

  @Option(names = "--to", paramLabel = "NAME", description = "One archive of the settings only.")
  private @Nullable String to;

  @Option(names = "--dry-run", description = "Say what is due, and deliver nothing.")
  private boolean dryRun;

  @Option(
      names = "--patience",
      paramLabel = "MINUTES",
      description = "How long to wait for what is due soon; otherwise not at all.")
  private int patienceMinutes;

  ForwardCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  ExitCode run(Practice practice) throws IOException {
    if (patienceMinutes < 0 || patienceMinutes > 1440) {
      console()
          .complain(
              "vestibule: --patience must be 0 to 1440 minutes but was " + patienceMinutes + ".");
      return ExitCode.WRONG_USE;
    }
    Delivering delivering =
        new Delivering(
            practice, new OutgoingLines(practice.clock()), new SecureRandom(), "forward");
    Outcome<DeliveryReport> report =
        dryRun
            ? delivering.plan(Optional.ofNullable(to))
            : delivering.run(
                Optional.ofNullable(to),
                Duration.ofMinutes(patienceMinutes),
                org.vestibule.flow.night.Pause.SLEEP::wait);
    if (report instanceof Refused<DeliveryReport> refused) {
      return refuse(refused);
    }
    new ForwardPrinter(console()).print(report.orThrow(), dryRun);
    return report.orThrow().needsPerson() ? ExitCode.NEEDS_A_PERSON : ExitCode.DONE;
  }
}
