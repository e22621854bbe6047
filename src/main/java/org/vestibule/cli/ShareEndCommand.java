package org.vestibule.cli;

import java.io.IOException;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Sharing;
import org.vestibule.store.ledger.ShareRow;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Ends a link. */
@Command(
    name = "end",
    description = {
      "End a link at once; it shows nothing any more.",
      "What somebody has saved has to be asked back by you."
    })
final class ShareEndCommand extends PersonCommand {

  @Parameters(paramLabel = "LINK", description = "The link's number, as share list prints it.")
  private int number;

  @Option(names = "--why", paramLabel = "WORDS", description = "Why; kept on record.")
  private String why = "";

  ShareEndCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  ExitCode run(Practice practice, String by) throws IOException {
    Outcome<ShareRow> ended = new Sharing(practice).end(number, by, why.strip());
    if (ended instanceof Refused<ShareRow> refused) {
      return refuse(refused);
    }
    console().say("Ended link " + number + ": it shows nothing any more.");
    return ExitCode.DONE;
  }
}
