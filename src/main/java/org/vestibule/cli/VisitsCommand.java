package org.vestibule.cli;

import picocli.CommandLine.Command;

/** The practice's visits. */
@Command(
    name = "visits",
    mixinStandardHelpOptions = true,
    description =
        "The practice's visits: list them, fetch a day's orders, add one by hand, or confirm a"
            + " patient's changed details.",
    subcommands = {
      VisitsAddCommand.class,
      VisitsFetchCommand.class,
      VisitsListCommand.class,
      VisitsConfirmCommand.class
    })
final class VisitsCommand {}
