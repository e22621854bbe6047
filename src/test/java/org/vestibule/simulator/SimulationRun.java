package org.vestibule.simulator;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * The long run of {@code conformance/long/rolls}: many days with no, one and two faults, sorted and
 * held against the truth.
 */
public final class SimulationRun {

  /** Of ten days one is without fault, five have one and four have two. */
  private static final int CYCLE = 10;

  private static final int FIRST_WITH_TWO = 6;

  private SimulationRun() {}

  /**
   * {@code ROLLS SEED SORTER}: how many days, the seed of the first, and the name of a class that
   * is a {@link RollSorter} with a constructor without parameters.
   */
  public static void main(String[] arguments) throws ReflectiveOperationException {
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    int rolls = Integer.parseInt(arguments[0]);
    long seed = Long.parseLong(arguments[1]);
    RollSorter sorter =
        Class.forName(arguments[2])
            .asSubclass(RollSorter.class)
            .getDeclaredConstructor()
            .newInstance();
    SimulationTables tables = run(rolls, seed, sorter);
    out.println(rolls + " rolls from seed " + seed + ", sorted by " + arguments[2]);
    tables.print(out);
    long wrong = tables.wrongWithOneVisibleFault();
    out.println("\nWrong filings with at most one fault, where it leaves a trace: " + wrong);
    if (wrong > 0) {
      throw new AssertionError(wrong + " wrong filings; examples with their seeds stand above");
    }
  }

  /** Sorts days whose seeds follow each other. */
  static SimulationTables run(int rolls, long seed, RollSorter sorter) {
    SimulationTables tables = new SimulationTables();
    for (int i = 0; i < rolls; i++) {
      SimulatedDay day = day(seed + i, i);
      Map<String, Sorted> sorted;
      try {
        sorted = Scorer.play(day, sorter);
      } catch (RuntimeException e) {
        throw new AssertionError(day.inWords(), e);
      }
      tables.add(day, sorted);
    }
    return tables;
  }

  /** Regimes take turns. */
  private static SimulatedDay day(long seed, int index) {
    Regime[] regimes = Regime.values();
    return day(seed, regimes[index % regimes.length], index / regimes.length);
  }

  /**
   * The day of a regime that a round has: the faults of the days with one take turns, pairs are
   * drawn by chance.
   */
  public static SimulatedDay day(long seed, Regime regime, int round) {
    int place = round % CYCLE;
    List<Fault> possible = RollSimulator.faults(regime);
    List<Fault> faults = new ArrayList<>();
    if (place >= FIRST_WITH_TWO) {
      Dice dice = new Dice(seed, 0);
      faults.add(dice.pick(possible));
      possible = possible.stream().filter(fault -> !faults.contains(fault)).toList();
      faults.add(dice.pick(possible));
    } else if (place > 0) {
      int turn = round / CYCLE * (FIRST_WITH_TWO - 1) + place - 1;
      faults.add(possible.get(turn % possible.size()));
    }
    return RollSimulator.day(seed, regime, faults);
  }
}
