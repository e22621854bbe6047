package org.vestibule.simulator.sorter;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.vestibule.assign.PhoneChair;
import org.vestibule.assign.SortingRules;
import org.vestibule.simulator.Regime;
import org.vestibule.simulator.Score;
import org.vestibule.simulator.Scorer;
import org.vestibule.simulator.SimulatedDay;
import org.vestibule.simulator.SimulationRun;

/** What each setting that loosens a rule costs: the same days with it and without it. */
public final class SettingsRun {

  private static final List<PhoneChair> CHAIRS =
      List.of(new PhoneChair("", "Norda 5", "1"), new PhoneChair("", "Norda 7 plus", "2"));

  /** A setting switched on where it matters. */
  private record Trial(String setting, Regime regime, SortingRules rules) {}

  private static final List<Trial> TRIALS =
      List.of(
          new Trial("opening-card-suffices", Regime.OPENING_CARD, rules(true, false, 0, false)),
          new Trial(
              "opening-card-suffices, gaps-are-deletions",
              Regime.OPENING_CARD,
              rules(true, true, 0, false)),
          new Trial("nothing loosened", Regime.BOTH_CARDS, SortingRules.STRICT),
          new Trial("gaps-are-deletions", Regime.BOTH_CARDS, rules(false, true, 0, false)),
          new Trial("margin-minutes = 10", Regime.BOTH_CARDS, rules(false, false, 10, false)),
          new Trial("[[chair]]", Regime.BOTH_CARDS, rules(false, false, 0, true)));

  /** What was put into a day. */
  private enum Faults {
    NONE("none"),
    ONE("one that leaves a trace"),
    ONE_SILENT("one that leaves none"),
    TWO("two that leave traces"),
    TWO_SILENT("two, at least one leaves none");

    private final String words;

    Faults(String words) {
      this.words = words;
    }

    static Faults of(SimulatedDay day) {
      boolean silent = day.faults().stream().anyMatch(f -> f.fault().silentIn(day.regime()));
      return switch (day.faults().size()) {
        case 0 -> NONE;
        case 1 -> silent ? ONE_SILENT : ONE;
        default -> silent ? TWO_SILENT : TWO;
      };
    }
  }

  private SettingsRun() {}

  private static SortingRules rules(boolean opening, boolean gaps, int margin, boolean chairs) {
    return new SortingRules(
        opening, gaps, Duration.ofMinutes(margin), List.of(), chairs ? CHAIRS : List.of());
  }

  /** {@code ROLLS SEED}: how many days for each setting, and the seed of the first. */
  public static void main(String[] arguments) {
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    int rolls = Integer.parseInt(arguments[0]);
    long seed = Long.parseLong(arguments[1]);
    out.println(rolls + " rolls for each setting, from seed " + seed);
    out.println(
        "\n| setting | regime | faults | rolls | clinical photos | settled right | of them with view"
            + " | wrong | for 10,000 | at most (95 %) | wrong rolls | at most (95 %) |");
    out.println("|---".repeat(12) + "|");
    for (Trial trial : TRIALS) {
      List<String> examples = new ArrayList<>();
      run(trial, rolls, seed, examples).forEach((faults, score) -> line(out, trial, faults, score));
      examples.forEach(System.err::println);
    }
  }

  private static Map<Faults, Score> run(Trial trial, int rolls, long seed, List<String> examples) {
    AssignSorter sorter = new AssignSorter(trial.rules());
    Map<Faults, Score> scores = new EnumMap<>(Faults.class);
    for (int i = 0; i < rolls; i++) {
      SimulatedDay day = SimulationRun.day(seed + i, trial.regime(), i);
      var sorted = Scorer.play(day, sorter);
      Score score = Scorer.score(day, sorted);
      scores.merge(Faults.of(day), score, Score::plus);
      if (score.filedWrong() > 0 && day.faults().size() < 2) {
        examples.add(
            trial.setting() + ": " + day.inWords() + ": " + Scorer.wrongs(day, sorted).get(0));
      }
    }
    return scores;
  }

  /**
   * Photographs of one roll are wrong together, so the bound is that of the rolls, at so many wrong
   * photographs for each wrong roll as were seen.
   */
  private static void line(PrintStream out, Trial trial, Faults faults, Score score) {
    double scale = 10_000.0 / score.clinical();
    String most =
        score.wrongRolls() == 0
            ? "-"
            : String.format(
                Locale.ROOT,
                "%.2f",
                scale
                    * score.filedWrong()
                    * score.wrongRollsAtMost()
                    * score.rolls()
                    / score.wrongRolls());
    out.println(
        String.format(
            Locale.ROOT,
            "| %s | %s | %s | %d | %d | %.1f %% | %.1f %% | %d | %.2f | %s | %d | %.3f %% |",
            trial.setting(),
            trial.regime().words(),
            faults.words,
            score.rolls(),
            score.clinical(),
            100 * score.selfFiledShare(),
            100 * score.withViewShare(),
            score.filedWrong(),
            scale * score.filedWrong(),
            most,
            score.wrongRolls(),
            100 * score.wrongRollsAtMost()));
  }
}
