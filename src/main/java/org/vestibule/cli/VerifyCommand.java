package org.vestibule.cli;

import java.io.IOException;
import java.util.List;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Verify;
import org.vestibule.store.Finding;
import picocli.CommandLine.Command;

/** Re-reads everything that is kept and says what is wrong. */
@Command(
    name = "verify",
    description = "Read every object again and compare it with the ledger and the index.")
final class VerifyCommand extends PracticeCommand {

  VerifyCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  ExitCode run(Practice practice) throws IOException {
    List<Finding> findings = Verify.run(practice);
    int objects = practice.store().ledger().kept().count();
    console().say("Read " + Counted.of(objects, "object") + " again, down to every coefficient.");
    if (findings.isEmpty()) {
      console().say("Everything is as it was kept.");
      return ExitCode.DONE;
    }
    if (findings.stream().noneMatch(Finding::asksForAPerson)) {
      console().say("Everything that counts is as it was kept.");
    }
    new FindingsPrinter(console()).print(findings);
    return FindingsPrinter.end(findings);
  }
}
