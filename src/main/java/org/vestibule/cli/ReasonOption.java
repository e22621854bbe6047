package org.vestibule.cli;

import org.vestibule.base.Outcome;
import picocli.CommandLine.Option;

/** Why something filed is corrected; the ledger keeps it for whoever asks later. */
final class ReasonOption {

  @Option(
      names = "--why",
      required = true,
      paramLabel = "WORDS",
      description = "Why; kept with the correction.")
  private String why = "";

  Outcome<String> words() {
    if (why.isBlank()) {
      return Outcome.refused(
          "the reason is empty, and the record keeps one with every correction",
          "say it in a few words: --why \"wrong patient chosen\"");
    }
    return Outcome.done(why.strip());
  }
}
