package org.vestibule.cli;

import picocli.CommandLine.Command;

/** Cards to print. */
@Command(
    name = "cards",
    mixinStandardHelpOptions = true,
    description =
        "Cards to print and photograph: they say which visit photographs belong to, or how they"
            + " were taken.",
    subcommands = {CardsVisitsCommand.class, CardsViewsCommand.class})
final class CardsCommand {}
