package org.vestibule.simulator;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** The long run, short: a careless sorter is found out, one that does nothing is not accused. */
class SimulationRunTest {

  /** Where trust works as long as nothing goes wrong. */
  private static final List<Regime> TRUSTED =
      List.of(Regime.BOTH_CARDS, Regime.OPENING_CARD, Regime.FOLDERS_AND_LIST, Regime.FOLDERS);

  /** They mislead whoever goes by the time alone, at one chair. */
  private static final Set<Fault> OF_TIME =
      EnumSet.of(
          Fault.LIST_MOVED,
          Fault.LIST_SWAPPED,
          Fault.OVERRUN,
          Fault.CLOCK_MINUTES,
          Fault.CLOCK_HOUR,
          Fault.CLOCK_DAY,
          Fault.ZONE_OTHER);

  /** They cost a trusting sorter nothing by themselves, or only views. */
  private static final Set<Fault> HARMLESS_ALONE =
      EnumSet.of(
          Fault.RETAKES,
          Fault.DELETED_PHOTOS,
          Fault.MISSED_CLOSING,
          Fault.CARD_TWICE,
          Fault.VIEW_CARD_MISSED,
          Fault.VIEW_CARD_WRONG,
          Fault.VIEW_CARD_NOT_SEEN,
          Fault.LIST_OF_YESTERDAY,
          Fault.CLOCK_RESET,
          Fault.PHONES_ONE_FOLDER,
          Fault.ZONE_MISSING,
          Fault.COUNTER_RESET,
          Fault.DUPLICATES);

  @Test
  void faultMisleadsASorterThatTrusts() {
    Set<Fault> harmful = EnumSet.complementOf(EnumSet.copyOf(HARMLESS_ALONE));
    harmful.removeAll(OF_TIME);
    for (Fault fault : harmful) {
      boolean wrong = false;
      for (Regime regime : TRUSTED) {
        for (int seed = 1; seed <= 30 && fault.occursIn(regime) && !wrong; seed++) {
          wrong = scored(RollSimulator.day(seed, regime, List.of(fault))).filedWrong() > 0;
        }
      }
      assertThat(wrong).as("%s, seeds 1 to 30", fault).isTrue();
    }
  }

  @Test
  void faultOfTimeMisleadsWhoeverGoesByTheTime() {
    for (Fault fault : OF_TIME) {
      long wrong = 0;
      for (int seed = 1; seed <= 30; seed++) {
        SimulatedDay clean = RollSimulator.day(seed, Regime.LIST, List.of());
        SimulatedDay day = RollSimulator.day(seed, Regime.LIST, List.of(fault));
        if (oneChair(clean)) {
          assertThat(scored(clean).filedWrong()).as(clean.inWords()).isZero();
        }
        wrong += oneChair(day) ? scored(day).filedWrong() : 0;
      }
      assertThat(wrong).as("%s, seeds 1 to 30", fault).isPositive();
    }
  }

  private static boolean oneChair(SimulatedDay day) {
    return day.everything().photos().stream().allMatch(photo -> photo.folder().isEmpty());
  }

  @Test
  void silentFaultMisleadsWhoeverFilesByItself() {
    for (Fault fault : Fault.values()) {
      for (Regime regime : Regime.values()) {
        if (fault.occursIn(regime) && fault.silentIn(regime)) {
          long wrong = 0;
          for (int seed = 1; seed <= 60 && wrong == 0; seed++) {
            wrong += scored(RollSimulator.day(seed, regime, List.of(fault))).filedWrong();
          }
          assertThat(wrong).as("%s, %s, seeds 1 to 60", fault, regime).isPositive();
        }
      }
    }
  }

  @Test
  void trustWorksWhereNothingGoesWrong() {
    for (int seed = 1; seed <= 20; seed++) {
      for (Regime regime : List.of(Regime.FOLDERS, Regime.OPENING_CARD, Regime.BOTH_CARDS)) {
        SimulatedDay day = RollSimulator.day(seed, regime, List.of());
        Score score = scored(day);
        assertThat(score.filedRight()).as(day.inWords()).isEqualTo(score.clinical());
        assertThat(score.viewWrong() + score.sideWrong() + score.cardsFiled()).isZero();
      }
    }
  }

  @Test
  void tablesNameEveryRegimeAndFault() {
    String printed = printed(SimulationRun.run(1_400, 1, new CredulousSorter()));
    for (Regime regime : Regime.values()) {
      assertThat(printed).contains("| " + regime.words() + " |");
    }
    for (Fault fault : Fault.values()) {
      assertThat(printed).contains("| " + fault.words() + " |");
    }
    assertThat(printed).contains("Wrong filings though each fault leaves a trace");
  }

  @Test
  void sorterThatLeavesAllWaitingIsNeverWrong() {
    SimulationTables tables = SimulationRun.run(700, 1, (day, before) -> Map.of());
    assertThat(tables.wrongWithOneVisibleFault()).isZero();
    assertThat(printed(tables))
        .contains("| opening and closing card | 10 | ", "| 0.0 % | 100.0 % |");
  }

  private static Score scored(SimulatedDay day) {
    return Scorer.score(day, Scorer.play(day, new CredulousSorter()));
  }

  private static String printed(SimulationTables tables) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    tables.print(new PrintStream(bytes, true, StandardCharsets.UTF_8));
    return bytes.toString(StandardCharsets.UTF_8);
  }
}
