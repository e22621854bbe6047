package org.vestibule.cli;

import java.util.List;
import org.vestibule.flow.Practice;
import org.vestibule.store.ledger.AccountRow;
import picocli.CommandLine.Command;

/** Lists who may use the pages. */
@Command(name = "list", description = "List who may use the pages, and as what.")
final class PeopleListCommand extends PracticeCommand {

  PeopleListCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  ExitCode run(Practice practice) {
    List<AccountRow> all = practice.store().ledger().accounts().all();
    if (all.isEmpty()) {
      console().say("Nobody has a name and a password yet.");
      return ExitCode.DONE;
    }
    Table table = new Table("name", "role", "let in by", "on");
    all.forEach(
        row ->
            table.row(
                row.name(),
                row.role(),
                row.addedBy(),
                row.at().atZone(practice.settings().zone()).toLocalDate().toString()));
    table.lines(0).forEach(console()::say);
    return ExitCode.DONE;
  }
}
