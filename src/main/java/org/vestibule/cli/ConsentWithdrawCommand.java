package org.vestibule.cli;

import java.util.List;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Consenting;
import org.vestibule.flow.Practice;
import org.vestibule.store.ledger.ReleaseRow;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Takes a consent back. */
@Command(
    name = "withdraw",
    description = {
      "Record that a patient took a consent back: no new copies are made for that purpose.",
      "The copies that are out of the house already are listed."
    })
final class ConsentWithdrawCommand extends PersonCommand {

  @Mixin private ConsentOfOption of = new ConsentOfOption();

  @Option(
      names = "--on",
      required = true,
      paramLabel = "YYYY-MM-DD",
      description = "The day it was taken back.")
  private String on = "";

  ConsentWithdrawCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  ExitCode run(Practice practice, String by) {
    Outcome<List<ReleaseRow>> out =
        new Consenting(practice).withdraw(of.patient, of.issuer, of.purpose, on, by);
    if (out instanceof Refused<List<ReleaseRow>> refused) {
      return refuse(refused);
    }
    console().say("Recorded: no new copies are made for this purpose.");
    CopiesOut.list(
        out.orThrow(),
        "Copies that are out of the house; your law says what to do about them:",
        console());
    return ExitCode.DONE;
  }
}
