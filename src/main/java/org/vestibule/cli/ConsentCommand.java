package org.vestibule.cli;

import picocli.CommandLine.Command;

/** What patients agreed to. */
@Command(
    name = "consent",
    mixinStandardHelpOptions = true,
    description = {
      "What patients agreed to, purpose by purpose: record it, list it, take it back.",
      "Your local law says when a consent is needed and what it has to look like."
    },
    subcommands = {
      ConsentAddCommand.class,
      ConsentImportCommand.class,
      ConsentListCommand.class,
      ConsentWithdrawCommand.class
    })
final class ConsentCommand {}
