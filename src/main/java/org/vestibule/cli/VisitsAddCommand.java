package org.vestibule.cli;

import org.vestibule.assign.Visit;
import org.vestibule.assign.VisitWords;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import org.vestibule.flow.VisitBook;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Adds a visit that a person types. */
@Command(name = "add", description = "Add a visit by hand; it is kept with your name.")
final class VisitsAddCommand extends PersonCommand {

  @Option(
      names = "--visit",
      required = true,
      paramLabel = "KEY",
      description = "A name for the visit that no other has.")
  private String key = "";

  @Option(
      names = "--patient",
      required = true,
      paramLabel = "NUMBER",
      description = "The patient's number in your practice.")
  private String number = "";

  @Option(
      names = "--name",
      required = true,
      paramLabel = "\"FAMILY, GIVEN\"",
      description = "The patient's name, family name first, with a comma.")
  private String name = "";

  @Option(names = "--born", paramLabel = "YYYY-MM-DD", description = "The date of birth.")
  private String born = "";

  @Option(names = "--sex", paramLabel = "F|M|O", description = "Sex, if it is recorded.")
  private String sex = "";

  @Option(
      names = "--from",
      required = true,
      paramLabel = "\"YYYY-MM-DD HH:MM\"",
      description = "When the visit begins, on the practice's clock.")
  private String from = "";

  @Option(
      names = "--until",
      required = true,
      paramLabel = "\"YYYY-MM-DD HH:MM\"",
      description = "When it ends.")
  private String until = "";

  @Option(names = "--accession", paramLabel = "NUMBER", description = "Accession number, if any.")
  private String accession = "";

  @Option(names = "--referrer", paramLabel = "\"FAMILY, GIVEN\"", description = "Who referred.")
  private String referrer = "";

  @Option(names = "--dentist", paramLabel = "\"FAMILY, GIVEN\"", description = "Who treats.")
  private String dentist = "";

  VisitsAddCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  boolean mayBegin() {
    return true;
  }

  @Override
  ExitCode run(Practice practice, String by) {
    Outcome<Visit> added =
        new VisitBook(practice)
            .add(
                new VisitWords(
                    key, number, "", name, born, sex, from, until, accession, referrer, dentist,
                    ""),
                by);
    if (added instanceof Refused<Visit> refused) {
      return refuse(refused);
    }
    console().say("Added visit " + added.orThrow().key() + ".");
    return ExitCode.DONE;
  }
}
