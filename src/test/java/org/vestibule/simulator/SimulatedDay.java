package org.vestibule.simulator;

import java.time.Instant;
import java.util.List;
import java.util.Map;

/**
 * A day as it is seen in the end, with the truth.
 *
 * @param everything the state of things in the last run
 * @param truth what each file really shows, by {@link SeenPhoto#key()}
 */
public record SimulatedDay(
    long seed, List<InjectedFault> faults, SeenDay everything, Map<String, Subject> truth) {

  private static final long RUN_EVERY_SECONDS = 86_400;

  public SimulatedDay {
    faults = List.copyOf(faults);
    truth = Map.copyOf(truth);
  }

  /** How the practice helps. */
  public Regime regime() {
    return everything.regime();
  }

  /** How many runs it takes until all files have arrived. */
  public int runs() {
    return everything.run();
  }

  /** The state of things in a run: later files have not arrived yet. */
  public SeenDay seenIn(int run) {
    Instant ranAt = everything.ranAt().minusSeconds(RUN_EVERY_SECONDS * (runs() - run));
    return new SeenDay(
        everything.date(),
        everything.zone(),
        everything.regime(),
        everything.patients(),
        everything.visits(),
        everything.photos().stream().filter(photo -> photo.run() <= run).toList(),
        run,
        ranAt);
  }

  /** Regime, seed and faults in one line, for reports. */
  public String inWords() {
    return "seed "
        + seed
        + ", "
        + regime().words()
        + ": "
        + (faults.isEmpty() ? "no fault" : faults);
  }
}
