package org.vestibule.cli;

import java.time.LocalDate;
import org.vestibule.flow.Consenting;
import org.vestibule.flow.Practice;
import org.vestibule.store.ledger.ConsentRow;
import picocli.CommandLine.Command;

/** Lists consents and withdrawals. */
@Command(
    name = "list",
    description = "List consents and withdrawals; for a patient and purpose the last one counts.")
final class ConsentListCommand extends PracticeCommand {

  ConsentListCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  boolean leavesNoTrace() {
    return true;
  }

  @Override
  ExitCode run(Practice practice) {
    Table table =
        new Table("patient", "purpose", "what", "on", "until", "face", "form", "recorded by");
    for (ConsentRow row : new Consenting(practice).all()) {
      LocalDate until = row.expires();
      table.row(
          row.patientId(),
          row.purpose(),
          row.given() ? "given" : "taken back",
          row.on().toString(),
          until == null ? "-" : until.toString(),
          row.face() ? "yes" : "no",
          row.form().isEmpty() ? "-" : row.form(),
          row.who());
    }
    if (table.isEmpty()) {
      console().say("No consent is recorded yet.");
    } else {
      table.lines(0).forEach(console()::say);
    }
    return ExitCode.DONE;
  }
}
