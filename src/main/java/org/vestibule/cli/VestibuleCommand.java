package org.vestibule.cli;

import picocli.CommandLine.Command;

/** The root: without a command it says what there is. */
@Command(
    name = "vestibule",
    description = {
      "From the camera roll of a dental practice to a lasting, findable, privacy-safe record.",
      ""
    },
    mixinStandardHelpOptions = true,
    version = VestibuleCommand.VERSION,
    synopsisSubcommandLabel = "COMMAND",
    commandListHeading = "%nCommands:%n",
    footer = {
      "",
      "Start with:  vestibule look FOLDER      (needs no set-up and changes nothing)",
      "or with:     vestibule demo             (an invented practice, start to finish)"
    })
final class VestibuleCommand {

  /** The program's name and version. */
  static final String VERSION = "vestibule 0.1.0";
}
