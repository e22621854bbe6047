package org.vestibule.cli;

import java.util.List;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Sharing;
import org.vestibule.store.ledger.ReleaseRow;
import org.vestibule.store.ledger.ShareRow;
import picocli.CommandLine.Command;

/** Lists the links, and how often each was opened. */
@Command(name = "list", description = "List the links, and how often each was opened.")
final class ShareListCommand extends PracticeCommand {

  ShareListCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  boolean leavesNoTrace() {
    return true;
  }

  @Override
  ExitCode run(Practice practice) {
    Sharing sharing = new Sharing(practice);
    List<ShareRow> all = sharing.all();
    if (all.isEmpty()) {
      console().say("Nothing is shared by link.");
      return ExitCode.DONE;
    }
    Table table =
        new Table("link", "until", "purpose", "photos", "for", "opened", "wrong", "state");
    for (ShareRow share : all) {
      ReleaseRow release = sharing.release(share);
      List<ShareRow.Opening> came = practice.store().ledger().shares().openings(share.number());
      long opened = came.stream().filter(ShareRow.Opening::opened).count();
      table.row(
          Integer.toString(share.number()),
          share.endsAt().atZone(practice.settings().zone()).toLocalDate().toString(),
          release.purpose(),
          Integer.toString(share.photos().size()),
          release.recipient(),
          Long.toString(opened),
          Long.toString(came.size() - opened),
          sharing.isOpen(share) ? "open" : share.ended() != null ? "ended" : "over");
    }
    table.lines(0).forEach(console()::say);
    return ExitCode.DONE;
  }
}
