package org.vestibule.cli;

import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.ConsentWords;
import org.vestibule.flow.Consenting;
import org.vestibule.flow.Practice;
import org.vestibule.store.ledger.ConsentRow;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Records a consent that a patient gave. */
@Command(name = "add", description = "Record a consent that a patient gave for one purpose.")
final class ConsentAddCommand extends PersonCommand {

  @Mixin private ConsentOfOption of = new ConsentOfOption();

  @Option(
      names = "--given",
      required = true,
      paramLabel = "YYYY-MM-DD",
      description = "The day it was given.")
  private String given = "";

  @Option(
      names = "--until",
      paramLabel = "YYYY-MM-DD",
      description = "The last day on which it holds, if it ends.")
  private String until = "";

  @Option(names = "--face", description = "It covers pictures that show the face.")
  private boolean face;

  @Option(
      names = "--form",
      required = true,
      paramLabel = "WORDS",
      description = "The version of the form that was signed.")
  private String form = "";

  @Option(
      names = "--guardian",
      paramLabel = "NAME",
      description = "Who signed for the patient, if it wasn't the patient.")
  private String guardian = "";

  @Option(
      names = "--of-age",
      paramLabel = "YEARS",
      description = "With a guardian: at how many years people are of age by your law.")
  private String ofAge = "";

  ConsentAddCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  ExitCode run(Practice practice, String by) {
    Outcome<ConsentRow> added =
        new Consenting(practice)
            .add(
                new ConsentWords(
                    of.patient,
                    of.issuer,
                    of.purpose,
                    given,
                    until,
                    face ? "yes" : "no",
                    form,
                    guardian,
                    ofAge),
                by);
    if (added instanceof Refused<ConsentRow> refused) {
      return refuse(refused);
    }
    console().say("Recorded the consent for " + added.orThrow().purpose() + ".");
    return ExitCode.DONE;
  }
}
