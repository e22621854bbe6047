package org.vestibule.cli;

import java.io.IOException;
import java.util.List;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Verify;
import org.vestibule.flow.look.Say;
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
    int objects = practice.store().ledger().kept().all().size();
    console().say("Read " + Counted.of(objects, "object") + " again, down to every coefficient.");
    if (findings.isEmpty()) {
      console().say("Everything is as it was kept.");
      return ExitCode.DONE;
    }
    if (findings.stream().noneMatch(Finding::asksForAPerson)) {
      console().say("Everything that counts is as it was kept.");
    }
    for (Finding finding : findings) {
      console().gap();
      console().wrapped(0, Say.capital(finding.what()) + ".");
      console().wrapped(2, "What to do: " + Ended.of(finding.advice()));
    }
    boolean serious = findings.stream().anyMatch(Finding::isSerious);
    if (serious) {
      return ExitCode.DAMAGE;
    }
    return findings.stream().anyMatch(Finding::asksForAPerson)
        ? ExitCode.NEEDS_A_PERSON
        : ExitCode.DONE;
  }
}
