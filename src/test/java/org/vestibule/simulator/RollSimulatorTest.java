package org.vestibule.simulator;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalTime;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.vestibule.card.CardSighting;
import org.vestibule.card.ViewCard;
import org.vestibule.dental.ViewCatalogue;

/** The simulator itself: the same again from the same seed, and each fault really there. */
class RollSimulatorTest {

  private static final int SEEDS = 12;

  /** Faults that chance, or files named by their time, can hide from the eye. */
  private static final Set<Fault> AT_TIMES =
      EnumSet.of(
          Fault.CLOCK_MINUTES,
          Fault.CLOCK_JUMPS,
          Fault.COUNTER_RESET,
          Fault.DELETED_PHOTOS,
          Fault.EDITED_TIME,
          Fault.LATE_AFTER_CLOSING,
          Fault.OVERRUN);

  @ParameterizedTest
  @EnumSource(Regime.class)
  void sameSeedGivesTheSameDay(Regime regime) {
    for (Fault fault : RollSimulator.faults(regime)) {
      SimulatedDay one = RollSimulator.day(7, regime, List.of(fault));
      assertThat(RollSimulator.day(7, regime, List.of(fault))).isEqualTo(one);
    }
    assertThat(RollSimulator.day(8, regime, List.of()).truth())
        .isNotEqualTo(RollSimulator.day(7, regime, List.of()).truth());
  }

  @ParameterizedTest
  @EnumSource(Fault.class)
  void eachFaultIsReallyThere(Fault fault) {
    Regime regime = fault.occursIn(Regime.BOTH_CARDS) ? Regime.BOTH_CARDS : Regime.FOLDERS_AND_LIST;
    int shown = 0;
    for (int seed = 1; seed <= SEEDS; seed++) {
      SimulatedDay day = RollSimulator.day(seed, regime, List.of(fault));
      boolean shows = new Evidence(day).shows(fault);
      assertThat(shows || AT_TIMES.contains(fault)).as(day.inWords()).isTrue();
      shown += shows ? 1 : 0;
    }
    assertThat(shown).as("%s, seeds 1 to %d", fault, SEEDS).isGreaterThan(SEEDS / 4);
  }

  /** What would count as a fault must not lie in a day without one. */
  @ParameterizedTest
  @EnumSource(Fault.class)
  void noFaultIsThereUnasked(Fault fault) {
    Regime regime = fault.occursIn(Regime.BOTH_CARDS) ? Regime.BOTH_CARDS : Regime.FOLDERS_AND_LIST;
    Set<Fault> ordinary = EnumSet.of(Fault.ZONE_MISSING, Fault.COUNTER_RESET, Fault.CLOCK_JUMPS);
    for (int seed = 1; seed <= SEEDS && !ordinary.contains(fault); seed++) {
      SimulatedDay day = RollSimulator.day(seed, regime, List.of());
      boolean bare = fault == Fault.VIEW_CARD_MISSED || fault == Fault.VIEW_CARD_WRONG;
      boolean views = day.everything().photos().stream().anyMatch(RollSimulatorTest::isViewCard);
      if (!bare || views) {
        boolean wraps = numbersWrap(day) && fault == Fault.DELETED_PHOTOS;
        assertThat(new Evidence(day).shows(fault) && !wraps)
            .as(day.inWords() + ", " + fault)
            .isFalse();
      }
    }
  }

  @ParameterizedTest
  @EnumSource(names = {"FOLDERS_AND_LIST", "BOTH_CARDS"})
  void everyPairOfFaultsCanBePutIntoADay(Regime regime) {
    List<Fault> faults = RollSimulator.faults(regime);
    int day = 0;
    for (Fault one : faults) {
      for (Fault two : faults) {
        if (one.compareTo(two) < 0) {
          SimulatedDay made = RollSimulator.day(++day, regime, List.of(one, two));
          assertThat(made.faults()).hasSize(2);
          assertThat(made.truth()).hasSameSizeAs(made.everything().photos());
        }
      }
    }
  }

  @ParameterizedTest
  @EnumSource(Regime.class)
  void showsTheProgramOnlyWhatTheRegimeGives(Regime regime) {
    for (int seed = 1; seed <= SEEDS; seed++) {
      SeenDay seen = RollSimulator.day(seed, regime, List.of()).everything();
      assertThat(seen.visits().isEmpty()).isEqualTo(!regime.list());
      assertThat(seen.visits()).allMatch(visit -> (visit.start() != null) == regime.times());
      assertThat(seen.patients().isEmpty()).isEqualTo(regime == Regime.NOTHING);
      long cards =
          seen.photos().stream().filter(p -> p.sighting() instanceof CardSighting.OneCard).count();
      assertThat(cards > 0).isEqualTo(regime.cards());
    }
  }

  @Test
  void filesThatComeLaterAreNotSeenBefore() {
    SimulatedDay day = RollSimulator.day(3, Regime.BOTH_CARDS, List.of(Fault.OUT_OF_ORDER));
    assertThat(day.runs()).isEqualTo(2);
    SeenDay first = day.seenIn(1);
    assertThat(first.photos()).isNotEmpty().allMatch(photo -> photo.run() == 1);
    assertThat(first.photos().size()).isLessThan(day.everything().photos().size());
    assertThat(first.ranAt().atZone(first.zone()).toLocalTime()).isEqualTo(LocalTime.of(22, 0));
    assertThat(first.ranAt().atZone(first.zone()).toLocalDate()).isEqualTo(first.date());
    assertThat(day.seenIn(2)).isEqualTo(day.everything());
  }

  @Test
  void countersWrapAfter9999() {
    List<String> names = new ArrayList<>();
    for (int seed = 1; seed <= 100; seed++) {
      RollSimulator.day(seed, Regime.NOTHING, List.of())
          .everything()
          .photos()
          .forEach(photo -> names.add(photo.fileName()));
    }
    assertThat(names).contains("IMG_9999.JPG", "IMG_0001.JPG").doesNotContain("IMG_0000.JPG");
  }

  @Test
  void everyViewIsInTheCatalogue() {
    assertThat(ShotMaker.VIEWS)
        .allMatch(view -> ViewCatalogue.standard().byKey(view.key()).isPresent());
  }

  @Test
  void pathsAreUnlikeEachOtherAlsoWhereCaseDoesNotMatter() {
    for (int seed = 1; seed <= SEEDS; seed++) {
      SimulatedDay day =
          RollSimulator.day(
              seed, Regime.BOTH_CARDS, List.of(Fault.PHONES_SAME_MODEL, Fault.COUNTER_RESET));
      Set<String> paths = new HashSet<>();
      assertThat(day.everything().photos())
          .allMatch(photo -> paths.add(photo.key().toLowerCase(Locale.ROOT)));
    }
  }

  @Test
  void faultThatDoesNotOccurIsRefused() {
    assertThatThrownBy(() -> RollSimulator.day(1, Regime.NOTHING, List.of(Fault.MISSED_CLOSING)))
        .hasMessage("MISSED_CLOSING doesn't occur with NOTHING");
  }

  private static boolean isViewCard(SeenPhoto photo) {
    return photo.sighting() instanceof CardSighting.OneCard one && one.card() instanceof ViewCard;
  }

  private static boolean numbersWrap(SimulatedDay day) {
    return day.everything().photos().stream().anyMatch(p -> p.fileName().equals("IMG_9999.JPG"));
  }
}
