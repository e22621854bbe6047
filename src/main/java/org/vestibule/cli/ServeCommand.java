package org.vestibule.cli;

import java.io.IOException;
import java.security.SecureRandom;
import java.util.concurrent.CountDownLatch;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import org.vestibule.flow.WebRules;
import org.vestibule.flow.delivering.ReportDoors;
import org.vestibule.flow.delivering.TurnedAway;
import org.vestibule.forward.Lines;
import org.vestibule.forward.OutgoingLines;
import org.vestibule.web.Server;
import org.vestibule.web.ServerStart;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Serves the pages until it is stopped. */
@Command(
    name = "serve",
    description = {
      "Serve the pages to browsers: search, photographs, what waits.",
      "Only this machine reaches them unless [web] in vestibule.toml says otherwise."
    })
final class ServeCommand extends PracticeCommand {

  @Option(names = "--port", paramLabel = "N", description = "Another port than the settings say.")
  private @Nullable Integer port;

  ServeCommand(Surroundings surroundings) {
    super(surroundings);
  }

  @Override
  boolean mayBegin() {
    return true;
  }

  @Override
  ExitCode run(Practice practice) throws IOException {
    if (port != null && (port < 0 || port > 65_535)) {
      console().complain("vestibule: --port must be 0 to 65535 but was " + port + ".");
      return ExitCode.WRONG_USE;
    }
    WebRules rules = practice.settings().web();
    Outcome<Server> started =
        ServerStart.start(
            practice, port == null ? rules : rules.at(port), console()::say, this::defect);
    if (!(started instanceof Done<Server> done)) {
      return refuse((Refused<Server>) started);
    }
    try (Server server = done.value();
        Lines.Door door = door(practice)) {
      say(server);
      if (door.port() > 0) {
        console().say("Archives report on port " + door.port() + ".");
      }
      untilStopped();
    }
    return ExitCode.DONE;
  }

  /** Pages are served even if nobody can listen for archives; nightly and forward do that too. */
  private Lines.Door door(Practice practice) {
    Outcome<Lines.Door> door =
        ReportDoors.open(
            practice,
            new OutgoingLines(practice.clock()),
            new SecureRandom(),
            new TurnedAway(
                who -> console().complain("vestibule: at the door for reports: " + Ended.of(who))));
    if (door instanceof Done<Lines.Door> open) {
      return open.value();
    }
    complain((Refused<?>) door);
    return ReportDoors.NONE;
  }

  private void say(Server server) {
    if (server.openingLink().isEmpty()) {
      console().say("The pages are served at " + server.address());
    } else {
      console().say("The pages are served on this machine. Open them with this link, once:");
      console().say(server.openingLink());
    }
    console().say("Stop with Ctrl+C.");
  }

  private void defect(Throwable failure) {
    console().complain("vestibule: a page failed: " + FailureWords.of(failure).words());
    if (traced()) {
      failure.printStackTrace(console().errors());
    }
  }

  /** The process ends by a signal; until then nothing is to be done here. */
  private static void untilStopped() {
    try {
      new CountDownLatch(1).await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
