package org.vestibule.cli;

import picocli.CommandLine.Command;

/** Photographs shown to somebody outside. */
@Command(
    name = "share",
    mixinStandardHelpOptions = true,
    description = {
      "Show photographs to somebody outside behind a link, for one purpose and a time.",
      "Behind it are copies, made and searched as release makes them, and nothing else."
    },
    subcommands = {ShareMakeCommand.class, ShareListCommand.class, ShareEndCommand.class})
final class ShareCommand {}
