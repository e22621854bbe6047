package org.vestibule.cli;

import picocli.CommandLine.Command;

/** The practice's visits. */
@Command(
    name = "visits",
    mixinStandardHelpOptions = true,
    description = "The practice's visits: list them, or add one by hand.",
    subcommands = {VisitsAddCommand.class, VisitsListCommand.class})
final class VisitsCommand {}
