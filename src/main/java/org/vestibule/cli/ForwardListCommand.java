package org.vestibule.cli;

import java.time.LocalDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import org.vestibule.flow.delivering.Undelivered;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Says what is where. */
@Command(
    name = "list",
    description = {
      "Say what needs a person on its way to an archive, and why;",
      "or of one photograph, where its objects are."
    })
final class ForwardListCommand extends PracticeCommand {

  private static final int MOST = 500;

  @Parameters(arity = "0..1", paramLabel = "ID", description = "A photograph, as find prints it.")
  private @Nullable String id;

  ForwardListCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  ExitCode run(Practice practice) {
    Undelivered undelivered = new Undelivered(practice);
    Outcome<List<Undelivered.Line>> lines =
        id == null ? Outcome.done(undelivered.all(MOST)) : undelivered.of(id);
    if (lines instanceof Refused<List<Undelivered.Line>> refused) {
      return refuse(refused);
    }
    lines.orThrow().forEach(line -> print(practice, line));
    if (lines.orThrow().isEmpty()) {
      console()
          .say(
              id == null
                  ? "Nothing needs a person on its way to an archive."
                  : "Nothing of this photograph was to be delivered yet.");
    } else if (lines.orThrow().size() == MOST) {
      console().say("These are the first " + MOST + " of each archive.");
    }
    boolean person = lines.orThrow().stream().anyMatch(line -> !line.advice().isEmpty());
    return person ? ExitCode.NEEDS_A_PERSON : ExitCode.DONE;
  }

  private void print(Practice practice, Undelivered.Line line) {
    console().say(line.id() + "  " + line.what() + "  " + line.destination() + ": " + line.state());
    if (!line.advice().isEmpty()) {
      console().reason(2, line.reason().isEmpty() ? line.state() : line.reason(), line.advice());
    } else if (!line.reason().isEmpty()) {
      console().wrapped(2, Ended.of(line.reason()));
    }
    line.changed()
        .forEach(
            (keyword, value) ->
                console().wrapped(2, "The archive has " + keyword + " as \"" + value + "\"."));
    line.due()
        .ifPresent(
            due ->
                console()
                    .say(
                        "  Next: "
                            + Times.words(
                                LocalDateTime.ofInstant(due, practice.settings().zone()))));
  }
}
