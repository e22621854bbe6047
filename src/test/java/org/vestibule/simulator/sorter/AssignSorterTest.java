package org.vestibule.simulator.sorter;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.vestibule.assign.PhoneChair;
import org.vestibule.assign.SortingRules;
import org.vestibule.simulator.Fault;
import org.vestibule.simulator.Regime;
import org.vestibule.simulator.RollSimulator;
import org.vestibule.simulator.RollSorter;
import org.vestibule.simulator.Score;
import org.vestibule.simulator.Scorer;
import org.vestibule.simulator.SimulatedDay;
import org.vestibule.simulator.Sorted;

/**
 * The program's rules against simulated days: the short form of {@code conformance/long/rolls}.
 * What is wrong is decided by the simulator, which knows nothing of the rules.
 */
class AssignSorterTest {

  private static final long SEED = 20_261_125L;

  @ParameterizedTest
  @CsvSource({"BOTH_CARDS, 2", "FOLDERS_AND_LIST, 1", "BOTH_CARDS_NO_TIMES, 1"})
  void singleFaultNeverFilesWrongly(Regime regime, int seeds) {
    neverWrong(regime, seeds, new AssignSorter());
  }

  /** The opening card and the visit's time are two facts too. */
  @Test
  void singleFaultNeverFilesWronglyWhereTheOpeningCardSuffices() {
    neverWrong(Regime.OPENING_CARD, 1, opening());
  }

  private static void neverWrong(Regime regime, int seeds, RollSorter sorter) {
    long right = 0;
    for (Fault fault : RollSimulator.faults(regime)) {
      for (int i = 0; i < seeds && !fault.silentIn(regime); i++) {
        SimulatedDay day = RollSimulator.day(SEED + i, regime, List.of(fault));
        Map<String, Sorted> sorted = Scorer.play(day, sorter);
        assertThat(Scorer.wrongs(day, sorted)).as(day.inWords()).isEmpty();
        Score score = Scorer.score(day, sorted);
        assertThat(score.wrongWithView() + score.sideWrong()).as(day.inWords()).isZero();
        right += score.filedRight();
      }
    }
    boolean settles = regime == Regime.BOTH_CARDS || regime == Regime.FOLDERS_AND_LIST;
    assertThat(right > 0 || !settles).as("something is settled with " + regime).isTrue();
  }

  /** A file in the folder of a patient who has their visit in the other chair then. */
  @Test
  void wrongFolderIsSeenWhereAnotherPatientHasAVisit() {
    for (int i = 0; i < 60; i++) {
      SimulatedDay day =
          RollSimulator.day(SEED + i, Regime.FOLDERS_AND_LIST, List.of(Fault.SHARED_FOLDER));
      Map<String, Sorted> sorted = Scorer.play(day, new AssignSorter());
      assertThat(Scorer.wrongs(day, sorted)).as(day.inWords()).isEmpty();
    }
  }

  /** What nothing in a roll gives away; docs/unattended.md lists it under what remains. */
  @ParameterizedTest
  @EnumSource(names = {"LATE_AFTER_CLOSING", "PRIVATE_WITHIN"})
  void faultThatLeavesNoTraceIsFiledWrongly(Fault fault) {
    assertThat(fault.silentIn(Regime.BOTH_CARDS)).isTrue();
    long wrong = 0;
    for (int i = 0; i < 40 && wrong == 0; i++) {
      SimulatedDay day = RollSimulator.day(SEED + i, Regime.BOTH_CARDS, List.of(fault));
      wrong += Scorer.score(day, Scorer.play(day, new AssignSorter())).filedWrong();
    }
    assertThat(wrong).as("seeds from " + SEED).isPositive();
  }

  @Test
  void nothingIsSettledByTimesOrFoldersAlone() {
    for (Regime regime :
        List.of(Regime.NOTHING, Regime.FOLDERS, Regime.LIST, Regime.OPENING_CARD)) {
      for (int i = 0; i < 4; i++) {
        SimulatedDay day = RollSimulator.day(SEED + i, regime, List.of());
        Score score = Scorer.score(day, Scorer.play(day, new AssignSorter()));
        assertThat(score.waiting()).as(day.inWords()).isEqualTo(score.clinical());
      }
    }
  }

  /** Two chairs at one time wait, unless each phone is known to stay at one. */
  @Test
  void phonesThatStayAtTheirChairsSettleADayWithoutFault() {
    AssignSorter chairs =
        new AssignSorter(
            new SortingRules(
                false,
                false,
                Duration.ZERO,
                List.of(),
                List.of(
                    new PhoneChair("", "Norda 5", "1"), new PhoneChair("", "Norda 7 plus", "2"))));
    long strict = 0;
    for (int i = 0; i < 10; i++) {
      SimulatedDay day = RollSimulator.day(SEED + i, Regime.BOTH_CARDS, List.of());
      Score score = Scorer.score(day, Scorer.play(day, chairs));
      assertThat(score.filedRight()).as(day.inWords()).isEqualTo(score.clinical());
      strict += Scorer.score(day, Scorer.play(day, new AssignSorter())).waiting();
    }
    assertThat(strict).isPositive();
  }

  @Test
  void whatWasFiledAndHasGoneStillSpeaks() {
    long right = 0;
    for (int i = 0; i < 20; i++) {
      SimulatedDay day =
          RollSimulator.day(SEED + i, Regime.BOTH_CARDS, List.of(Fault.OUT_OF_ORDER));
      Map<String, Sorted> sorted = Scorer.play(day, new AssignSorter());
      right +=
          day.everything().photos().stream()
              .filter(photo -> photo.run() > 1)
              .filter(photo -> sorted.get(photo.key()) instanceof Sorted.Filed)
              .count();
    }
    assertThat(right).isPositive();
  }

  private static AssignSorter opening() {
    return new AssignSorter(new SortingRules(true, false, Duration.ZERO, List.of(), List.of()));
  }
}
