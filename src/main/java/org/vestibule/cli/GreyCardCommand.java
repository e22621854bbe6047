package org.vestibule.cli;

import static java.util.Objects.requireNonNull;

import java.io.IOException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.GreyCards;
import org.vestibule.flow.Practice;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Judges a photograph's colours by a grey card in it. */
@Command(
    name = "grey-card",
    description = {
      "Say where a grey card lies in a filed photograph, and learn how true its colours are.",
      "Nothing is changed in the picture; what was found is kept and can be searched for."
    })
final class GreyCardCommand extends PersonCommand {

  private static final Pattern SPOT =
      Pattern.compile("\\s*(0|1|0?\\.[0-9]+|1\\.0+)\\s*,\\s*(0|1|0?\\.[0-9]+|1\\.0+)\\s*");

  @Parameters(paramLabel = "ID", description = "The photograph, as find prints it.")
  private String id = "";

  @Option(
      names = "--at",
      required = true,
      paramLabel = "X,Y",
      description =
          "A spot on the card, as fractions of the picture as it is shown:"
              + " 0.5,0.9 is below the middle.")
  private @Nullable String at;

  GreyCardCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  ExitCode run(Practice practice, String by) throws IOException {
    Matcher spot = SPOT.matcher(requireNonNull(at));
    if (!spot.matches()) {
      complain(
          new Refused<Void>(
              "--at says \"" + at + "\", and two numbers from 0 to 1 were expected",
              "write for example --at 0.5,0.9 for a card below the middle of the picture"));
      return ExitCode.WRONG_USE;
    }
    Outcome<GreyCards.Marked> marked =
        new GreyCards(practice)
            .mark(id, Double.parseDouble(spot.group(1)), Double.parseDouble(spot.group(2)), by);
    if (!(marked instanceof Done<GreyCards.Marked> done)) {
      return refuse((Refused<GreyCards.Marked>) marked);
    }
    console().wrapped(0, (done.value().sentence() + " " + done.value().whatToDo()).strip());
    return ExitCode.DONE;
  }
}
