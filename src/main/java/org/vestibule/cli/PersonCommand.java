package org.vestibule.cli;

import java.io.IOException;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import picocli.CommandLine.Mixin;

/** A command by which a named person decides something. */
abstract class PersonCommand extends PracticeCommand {

  @Mixin private PersonOption person = new PersonOption();

  PersonCommand(Surroundings surroundings) {
    super(surroundings);
  }

  /** What the command does, once the practice is open and the person has a name. */
  abstract ExitCode run(Practice practice, String by) throws IOException;

  @Override
  final ExitCode run(Practice practice) throws IOException {
    Outcome<String> name = person.name(surroundings());
    if (name instanceof Done<String> by) {
      return run(practice, by.value());
    }
    complain((Refused<String>) name);
    return ExitCode.WRONG_USE;
  }
}
