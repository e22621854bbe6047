package org.vestibule.cli;

import java.util.List;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Releasing;
import org.vestibule.store.ledger.ReleaseRow;
import picocli.CommandLine.Command;

/** Lists the copies that left the practice. */
@Command(name = "list", description = "List the copies that left the practice.")
final class ReleaseListCommand extends PracticeCommand {

  ReleaseListCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  boolean leavesNoTrace() {
    return true;
  }

  @Override
  ExitCode run(Practice practice) {
    List<ReleaseRow> all = new Releasing(practice).all();
    if (all.isEmpty()) {
      console().say("No copies have left the practice.");
    } else {
      table(all).lines(0).forEach(console()::say);
    }
    return ExitCode.DONE;
  }

  static Table table(List<ReleaseRow> releases) {
    Table table = new Table("release", "day", "purpose", "photos", "for", "state");
    for (ReleaseRow row : releases) {
      table.row(
          row.id(),
          row.madeOn().toString(),
          row.purpose(),
          Integer.toString(row.items().size()),
          row.recipient(),
          row.withdrawn() == null ? "out" : "withdrawn");
    }
    return table;
  }
}
