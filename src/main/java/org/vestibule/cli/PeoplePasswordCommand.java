package org.vestibule.cli;

import java.io.IOException;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import org.vestibule.keys.Passwords;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Gives somebody another password. */
@Command(name = "password", description = "Give somebody another password; it ends their sittings.")
final class PeoplePasswordCommand extends PersonCommand {

  @Parameters(paramLabel = "NAME", description = "What is typed to sign in.")
  private String name = "";

  @Mixin private PasswordOption password = new PasswordOption();

  PeoplePasswordCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  ExitCode run(Practice practice, String by) throws IOException {
    Outcome<char[]> said = password.read(surroundings());
    if (!(said instanceof Done<char[]> known)) {
      return refuse((Refused<char[]>) said);
    }
    String hash = Passwords.hash(known.value());
    if (!practice.store().ledger().accounts().password(name.strip(), hash, by)) {
      return refuse(PeopleRemoveCommand.unknown(name));
    }
    console().say(name.strip() + " has another password and signs in again.");
    return ExitCode.DONE;
  }
}
