package org.vestibule.cli;

import java.io.IOException;
import org.vestibule.flow.Practice;
import org.vestibule.store.index.CaughtUp;
import picocli.CommandLine.Command;

/** Makes the index again from the ledger. */
@Command(name = "reindex", description = "Make the index for finding again from the ledger.")
final class ReindexCommand extends PracticeCommand {

  ReindexCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  ExitCode run(Practice practice) throws IOException {
    CaughtUp made = practice.store().reindex();
    if (made.kind() == CaughtUp.Kind.BUSY) {
      console().complain("vestibule: another process is writing the index.");
      console().complain("  What to do: wait a moment and run reindex again.");
      return ExitCode.BUSY;
    }
    console().say("The index was made again from the ledger; finding gives the same answers.");
    return ExitCode.DONE;
  }
}
