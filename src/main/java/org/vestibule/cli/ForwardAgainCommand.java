package org.vestibule.cli;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import org.vestibule.flow.delivering.Undelivered;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Tries again what came to an end. */
@Command(
    name = "again",
    description =
        "Have what came to an end tried again, as if it were new: one photograph, or all.")
final class ForwardAgainCommand extends PersonCommand {

  @Parameters(arity = "0..1", paramLabel = "ID", description = "A photograph, as find prints it.")
  private @Nullable String id;

  @Option(names = "--to", paramLabel = "NAME", description = "One archive of the settings only.")
  private @Nullable String to;

  @Mixin private ReasonOption reason = new ReasonOption();

  ForwardAgainCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  ExitCode run(Practice practice, String by) {
    Outcome<String> why = reason.words();
    if (why instanceof Refused<String> refused) {
      complain(refused);
      return ExitCode.WRONG_USE;
    }
    Outcome<Integer> again =
        new Undelivered(practice)
            .again(Optional.ofNullable(id), Optional.ofNullable(to), by, why.orThrow());
    if (again instanceof Refused<Integer> refused) {
      return refuse(refused);
    }
    console()
        .say(
            again.orThrow() == 0
                ? "Nothing had come to an end."
                : Counted.of(again.orThrow(), "object")
                    + " will be tried again by the next delivery.");
    return ExitCode.DONE;
  }
}
