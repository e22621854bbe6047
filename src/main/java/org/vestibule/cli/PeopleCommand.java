package org.vestibule.cli;

import picocli.CommandLine.Command;

/** Who may use the pages. */
@Command(
    name = "people",
    mixinStandardHelpOptions = true,
    description = "Who may use the pages: let somebody in, list them, give a new password, remove.",
    subcommands = {
      PeopleAddCommand.class,
      PeopleListCommand.class,
      PeoplePasswordCommand.class,
      PeopleRemoveCommand.class
    })
final class PeopleCommand {}
