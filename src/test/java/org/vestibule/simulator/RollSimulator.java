package org.vestibule.simulator;

import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** Makes days from seeds: the same seed, regime and faults always give the same day. */
public final class RollSimulator {

  private static final LocalTime NIGHTLY = LocalTime.of(22, 0);

  /** How many days are tried until one gives occasion for all faults. */
  private static final int TRIES = 100;

  private RollSimulator() {}

  /**
   * A day with these faults.
   *
   * @throws IllegalArgumentException if a fault doesn't occur in the regime
   */
  public static SimulatedDay day(long seed, Regime regime, Collection<Fault> faults) {
    for (Fault fault : faults) {
      if (!fault.occursIn(regime)) {
        throw new IllegalArgumentException(fault + " doesn't occur with " + regime);
      }
    }
    for (int attempt = 0; attempt < TRIES; attempt++) {
      Optional<SimulatedDay> day = attempt(seed, attempt, regime, new TreeSet<>(faults));
      if (day.isPresent()) {
        return day.get();
      }
    }
    throw new IllegalArgumentException(
        "no day in " + TRIES + " gave occasion for " + faults + " with " + regime);
  }

  private static Optional<SimulatedDay> attempt(
      long seed, int attempt, Regime regime, Set<Fault> faults) {
    // Faults come in the order of the enum: the set is sorted.
    long start = seed * TRIES + attempt;
    Plan plan =
        DayMaker.make(
            regime,
            new Dice(start, 1),
            faults.stream().anyMatch(Fault::needsTwoPhones),
            faults.stream().anyMatch(Fault::silentForViews));
    List<InjectedFault> injected = new ArrayList<>();
    for (Fault.Stage stage : Fault.Stage.values()) {
      if (stage == Fault.Stage.SHOTS) {
        ShotMaker.make(plan, new Dice(start, 2));
      } else if (stage == Fault.Stage.FILES) {
        Developing.develop(plan);
      }
      for (Fault fault : faults) {
        if (fault.stage() == stage) {
          Optional<String> what = fault.inject(plan, new Dice(start, fault.name().hashCode()));
          if (what.isEmpty()) {
            return Optional.empty();
          }
          injected.add(new InjectedFault(fault, what.get()));
        }
      }
    }
    return Optional.of(finished(seed, plan, injected));
  }

  private static SimulatedDay finished(long seed, Plan plan, List<InjectedFault> injected) {
    Developing.tellApart(plan);
    Map<String, Subject> truth = new HashMap<>();
    List<SeenPhoto> photos = new ArrayList<>();
    for (RollFile file : plan.files) {
      SeenPhoto seen = file.seen();
      photos.add(seen);
      truth.put(seen.key(), file.shot.subject);
    }
    photos.sort(Comparator.comparing(SeenPhoto::key));
    int runs = photos.stream().mapToInt(SeenPhoto::run).max().orElse(1);
    SeenDay everything =
        new SeenDay(
            plan.date,
            plan.zone,
            plan.regime,
            knownPatients(plan),
            plan.regime.list() ? plan.book : List.of(),
            photos,
            runs,
            plan.date.plusDays(runs - 1L).atTime(NIGHTLY).atZone(plan.zone).toInstant());
    return new SimulatedDay(seed, injected, everything, truth);
  }

  private static List<SimulatedPatient> knownPatients(Plan plan) {
    if (plan.regime.folders()) {
      return plan.patients.stream().distinct().toList();
    }
    return plan.regime.list()
        ? plan.book.stream().map(SimulatedVisit::patient).distinct().toList()
        : List.of();
  }

  /** All faults that occur in a regime. */
  public static List<Fault> faults(Regime regime) {
    return Arrays.stream(Fault.values()).filter(fault -> fault.occursIn(regime)).toList();
  }
}
