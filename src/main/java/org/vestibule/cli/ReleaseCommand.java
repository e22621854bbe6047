package org.vestibule.cli;

import picocli.CommandLine.Command;

/** Copies that leave the practice. */
@Command(
    name = "release",
    mixinStandardHelpOptions = true,
    description = {
      "Copies that leave the practice, each for one purpose: make them, list them, take them back.",
      "Your local law says what may leave; this program only ever narrows that."
    },
    subcommands = {
      ReleaseLookCommand.class,
      ReleaseMakeCommand.class,
      ReleaseListCommand.class,
      ReleaseShowCommand.class,
      ReleaseWithdrawCommand.class
    })
final class ReleaseCommand {}
