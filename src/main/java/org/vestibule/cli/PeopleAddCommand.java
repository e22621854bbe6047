package org.vestibule.cli;

import java.io.IOException;
import java.util.Locale;
import java.util.Optional;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import org.vestibule.keys.Passwords;
import org.vestibule.web.Role;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Lets somebody in. */
@Command(
    name = "add",
    description = {
      "Let somebody in: a person, or a device that several people share.",
      "The password is typed unseen, or the first line of a file."
    })
final class PeopleAddCommand extends PersonCommand {

  @Parameters(paramLabel = "NAME", description = "What is typed to sign in.")
  private String name = "";

  @Option(
      names = "--role",
      required = true,
      paramLabel = "ROLE",
      description = "reader sees, staff decides too, administrator lets others in too.")
  private String role = "";

  @Mixin private PasswordOption password = new PasswordOption();

  PeopleAddCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  boolean mayBegin() {
    return true;
  }

  @Override
  ExitCode run(Practice practice, String by) throws IOException {
    Optional<Role> may = Role.of(role.toLowerCase(Locale.ROOT)).filter(Role::isAccount);
    if (may.isEmpty() || !name.strip().matches("\\P{Cntrl}{1,80}")) {
      console()
          .complain(
              may.isEmpty()
                  ? "vestibule: --role must be reader, staff or administrator but was " + role + "."
                  : "vestibule: a name of 1 to 80 characters is needed.");
      return ExitCode.WRONG_USE;
    }
    Outcome<char[]> said = password.read(surroundings());
    if (!(said instanceof Done<char[]> known)) {
      return refuse((Refused<char[]>) said);
    }
    boolean added =
        practice
            .store()
            .ledger()
            .accounts()
            .add(name.strip(), may.get().word(), Passwords.hash(known.value()), by);
    if (!added) {
      return refuse(
          new Refused<Void>(
              "the name \"" + name.strip() + "\" is taken",
              "choose another, or use \"people password\" for a new password"));
    }
    console().say(name.strip() + " may sign in now, as " + may.get().word() + ".");
    return ExitCode.DONE;
  }
}
