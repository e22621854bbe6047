package org.vestibule.simulator;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Adds up the scores of many days and prints them, for each regime, fault and pair of faults. */
final class SimulationTables {

  private static final int PAIRS_PRINTED = 40;
  private static final int EXAMPLES = 20;

  /** What was put into the days of a row. */
  private record Row(Regime regime, Set<Fault> faults) {

    boolean silent() {
      return faults.stream().anyMatch(fault -> fault.silentIn(regime));
    }

    String words() {
      return faults.stream().map(Fault::words).collect(Collectors.joining(" + "));
    }
  }

  private final Map<Row, Score> scores = new HashMap<>();
  private final List<String> examples = new ArrayList<>();

  void add(SimulatedDay day, Map<String, Sorted> sorted) {
    Set<Fault> faults =
        day.faults().stream()
            .map(InjectedFault::fault)
            .collect(Collectors.toCollection(TreeSet::new));
    Row row = new Row(day.regime(), faults);
    Score score = Scorer.score(day, sorted);
    scores.merge(row, score, Score::plus);
    if (score.filedWrong() > 0 && !row.silent() && examples.size() < EXAMPLES) {
      examples.add(day.inWords() + ": " + Scorer.wrongs(day, sorted).get(0));
    }
  }

  /** Wrong filings in days with at most one fault that leaves a trace: the number to be zero. */
  long wrongWithOneVisibleFault() {
    return scores.entrySet().stream()
        .filter(entry -> entry.getKey().faults.size() < 2 && !entry.getKey().silent())
        .mapToLong(entry -> entry.getValue().filedWrong())
        .sum();
  }

  void print(PrintStream out) {
    byRegime(out, "No fault", row -> row.faults.isEmpty());
    byRegime(out, "One fault that leaves a trace", row -> row.faults.size() == 1 && !row.silent());
    byRegime(out, "One fault that leaves none", row -> row.faults.size() == 1 && row.silent());
    byRegime(out, "Two faults that leave traces", row -> row.faults.size() == 2 && !row.silent());
    byRegime(
        out, "Two faults, at least one leaves none", row -> row.faults.size() == 2 && row.silent());
    byFault(out);
    wrongByFaultAndRegime(out);
    pairs(out);
    if (!examples.isEmpty()) {
      out.println(
          "\nWrong filings though each fault leaves a trace, the first " + EXAMPLES + ":\n");
      examples.forEach(example -> out.println("- " + example));
    }
  }

  private interface Of {
    boolean test(Row row);
  }

  private Score sum(Of wanted) {
    return scores.entrySet().stream()
        .filter(entry -> wanted.test(entry.getKey()))
        .map(Map.Entry::getValue)
        .reduce(Score.NONE, Score::plus);
  }

  private void byRegime(PrintStream out, String title, Of wanted) {
    out.println("\n" + title + ", by regime\n");
    head(out, "regime");
    for (Regime regime : Regime.values()) {
      line(out, regime.words(), sum(row -> row.regime == regime && wanted.test(row)));
    }
  }

  private void byFault(PrintStream out) {
    out.println("\nOne fault that leaves a trace, by fault, over all regimes\n");
    head(out, "fault");
    for (Fault fault : Fault.values()) {
      line(out, fault.words(), sum(row -> row.faults.equals(Set.of(fault)) && !row.silent()));
    }
  }

  private void wrongByFaultAndRegime(PrintStream out) {
    out.println(
        "\nRolls with a wrong filing of rolls with this one fault; * the fault leaves no trace there\n");
    String regimes =
        Arrays.stream(Regime.values()).map(Regime::words).collect(Collectors.joining(" | "));
    out.println("| fault | " + regimes + " |");
    out.println("|---".repeat(Regime.values().length + 1) + "|");
    for (Fault fault : Fault.values()) {
      List<String> cells = new ArrayList<>();
      for (Regime regime : Regime.values()) {
        Score score = scores.getOrDefault(new Row(regime, Set.of(fault)), Score.NONE);
        String mark = fault.silentIn(regime) ? "*" : "";
        cells.add(score.rolls() == 0 ? "-" : score.wrongRolls() + "/" + score.rolls() + mark);
      }
      out.println("| " + fault.words() + " | " + String.join(" | ", cells) + " |");
    }
  }

  private void pairs(PrintStream out) {
    Map<String, Score> pairs = new TreeMap<>();
    Map<Boolean, Integer> counts = new HashMap<>();
    scores.forEach(
        (row, score) -> {
          if (row.faults.size() == 2 && !row.silent()) {
            pairs.merge(row.words() + ", " + row.regime.words(), score, Score::plus);
            counts.merge(score.filedWrong() > 0, 1, Integer::sum);
          }
        });
    out.println(
        "\nPairs whose faults both leave traces: "
            + counts.getOrDefault(true, 0)
            + " with a wrong filing, "
            + counts.getOrDefault(false, 0)
            + " without; the worst:\n");
    head(out, "pair");
    pairs.entrySet().stream()
        .filter(entry -> entry.getValue().filedWrong() > 0)
        .sorted(Comparator.comparing(entry -> -entry.getValue().wrongRolls()))
        .limit(PAIRS_PRINTED)
        .forEach(entry -> line(out, entry.getKey(), entry.getValue()));
  }

  private static void head(PrintStream out, String first) {
    out.println(
        "| "
            + first
            + " | rolls | clinical photos | filed right | of them with view | wait | wrong photos"
            + " | of them with view | wrong rolls | at most (95 %) | view wrong | side wrong | set aside as card | cards filed |");
    out.println("|---".repeat(14) + "|");
  }

  private static void line(PrintStream out, String first, Score score) {
    if (score.rolls() == 0) {
      return;
    }
    out.println(
        String.format(
            Locale.ROOT,
            "| %s | %d | %d | %.1f %% | %.1f %% | %.1f %% | %d | %d | %d | %.3f %% | %d | %d | %d | %d |",
            first,
            score.rolls(),
            score.clinical(),
            100 * score.selfFiledShare(),
            100 * score.withViewShare(),
            score.clinical() == 0 ? 0 : 100.0 * score.waiting() / score.clinical(),
            score.filedWrong(),
            score.wrongWithView(),
            score.wrongRolls(),
            100 * score.wrongRollsAtMost(),
            score.viewWrong(),
            score.sideWrong(),
            score.clinicalSetAside(),
            score.cardsFiled()));
  }
}
