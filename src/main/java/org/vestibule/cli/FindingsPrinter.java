package org.vestibule.cli;

import java.util.List;
import org.vestibule.flow.look.Say;
import org.vestibule.store.Finding;

/** Prints what is wrong with a store, each with what to do about it. */
final class FindingsPrinter {

  private final Console console;

  FindingsPrinter(Console console) {
    this.console = console;
  }

  void print(List<Finding> findings) {
    for (Finding finding : findings) {
      console.gap();
      console.wrapped(0, Say.capital(finding.what()) + ".");
      console.wrapped(2, "What to do: " + Ended.of(finding.advice()));
    }
  }

  /** How a command ends that found this. */
  static ExitCode end(List<Finding> findings) {
    if (findings.stream().anyMatch(Finding::isSerious)) {
      return ExitCode.DAMAGE;
    }
    return findings.stream().anyMatch(Finding::asksForAPerson)
        ? ExitCode.NEEDS_A_PERSON
        : ExitCode.DONE;
  }
}
