package org.vestibule.flow;

import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.concurrent.atomic.AtomicInteger;
import org.vestibule.store.steps.WriteStep;
import org.vestibule.store.steps.WriteSteps;

/**
 * A process that ingests and is dead the moment it reaches the chosen write step, or lives and
 * prints how many there were.
 */
public final class KilledIngest {

  private KilledIngest() {}

  /** The home folder, the step's name (or none), and which time it is reached. */
  public static void main(String[] args) throws Exception {
    Path home = Path.of(args[0]);
    AtomicInteger times = new AtomicInteger();
    WriteSteps steps =
        step -> {
          boolean chosen = args[1].equals("any") || step.name().equals(args[1]);
          if (chosen && times.incrementAndGet() == Integer.parseInt(args[2])) {
            Runtime.getRuntime().halt(137);
          }
        };
    Settings settings = Settings.defaults(home, ZoneId.of("Europe/Vienna"));
    try (Practice practice =
        Practice.open(home, settings, Clock.systemUTC(), true, steps).orThrow()) {
      Path inbox = home.resolve("inbox");
      Ingest.run(
              practice,
              new IngestRequest(inbox, inbox.resolve("manifest.csv"), "nightly job", false, false),
              Progress.NONE)
          .orThrow();
    }
    System.out.println("steps " + times.get() + " of " + WriteStep.values().length + " kinds");
  }
}
