package org.vestibule.cli;

import java.io.IOException;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Lets somebody in no longer. */
@Command(name = "remove", description = "Let somebody in no longer; it ends their sittings.")
final class PeopleRemoveCommand extends PersonCommand {

  @Parameters(paramLabel = "NAME", description = "What is typed to sign in.")
  private String name = "";

  PeopleRemoveCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  ExitCode run(Practice practice, String by) throws IOException {
    if (!practice.store().ledger().accounts().remove(name.strip(), by)) {
      return refuse(unknown(name));
    }
    console().say(name.strip() + " may sign in no longer.");
    return ExitCode.DONE;
  }

  static Refused<Void> unknown(String name) {
    return new Refused<>(
        "nobody is called \"" + name.strip() + "\" here", "\"people list\" names everybody");
  }
}
