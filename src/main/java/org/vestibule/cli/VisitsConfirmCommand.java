package org.vestibule.cli;

import org.vestibule.assign.Patient;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import org.vestibule.flow.VisitBook;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Says that a patient's details did change, as the visit list has them. */
@Command(
    name = "confirm",
    description = {
      "Confirm that a patient's name, birth date or sex did change as the visit list has it.",
      "Until then nothing is filed under that patient's visits. What is filed already stays as it is."
    })
final class VisitsConfirmCommand extends PersonCommand {

  @Option(
      names = "--patient",
      required = true,
      paramLabel = "NUMBER",
      description = "The patient's number in your practice.")
  private String number = "";

  VisitsConfirmCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  ExitCode run(Practice practice, String by) {
    Outcome<Patient> confirmed = new VisitBook(practice).confirm(number, by);
    if (confirmed instanceof Refused<Patient> refused) {
      return refuse(refused);
    }
    Patient patient = confirmed.orThrow();
    console()
        .say(
            "Patient "
                + patient.id()
                + " is now "
                + patient.name().replace("^", ", ")
                + (patient.birthDate() == null ? "" : ", born " + patient.birthDate())
                + ". What waits for this patient's visits is taken with the next ingest.");
    return ExitCode.DONE;
  }
}
