package org.vestibule.cli;

import java.io.IOException;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.FetchedOrders;
import org.vestibule.flow.Practice;
import org.vestibule.flow.VisitOrders;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Fetches the orders of a day from the worklist that the settings name. */
@Command(
    name = "fetch",
    description = {
      "Fetch a day's orders from the worklist into the visits.",
      "Nothing that contradicts the record is taken over; it is told instead."
    })
final class VisitsFetchCommand extends PracticeCommand {

  @Option(names = "--day", paramLabel = "YYYY-MM-DD", description = "The day; otherwise today.")
  private @Nullable LocalDate day;

  VisitsFetchCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  boolean mayBegin() {
    return true;
  }

  @Override
  ExitCode run(Practice practice) throws IOException {
    LocalDate asked =
        day != null ? day : LocalDate.now(practice.clock().withZone(practice.settings().zone()));
    Outcome<FetchedOrders> fetched = new VisitOrders(practice).fetch(asked, "");
    if (fetched instanceof Refused<FetchedOrders> refused) {
      return refuse(refused);
    }
    FetchedOrders orders = fetched.orThrow();
    console()
        .say(
            "Orders of "
                + orders.day()
                + ": "
                + orders.added().size()
                + " new, "
                + orders.changed().size()
                + " changed, "
                + orders.known()
                + " as before.");
    if (!orders.added().isEmpty()) {
      console().wrapped(2, "New visits: " + String.join(", ", orders.added()) + ".");
    }
    orders.changed().forEach(line -> console().wrapped(2, Ended.of("Changed: " + line)));
    orders.notes().forEach(line -> console().wrapped(2, Ended.of("Note: " + line)));
    if (orders.concerns().isEmpty()) {
      return ExitCode.DONE;
    }
    console().say("");
    console().say("Not taken over:");
    orders.concerns().forEach(line -> console().wrapped(2, Ended.of(line)));
    return ExitCode.NEEDS_A_PERSON;
  }
}
