package org.vestibule.simulator;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/** What goes wrong between the list and the day: before a shutter is released. */
final class ScheduleFaults {

  private ScheduleFaults() {}

  static Optional<String> moved(Plan plan, Dice dice) {
    Sitting sitting = dice.pick(plan.sittings);
    int minutes = dice.pick(List.of(-180, -120, -90, -60, 60, 90, 120, 180));
    int entry = plan.bookEntry(sitting);
    SimulatedVisit listed = plan.book.get(entry);
    if (listed.start() == null || listed.end() == null) {
      return Optional.empty();
    }
    plan.book.set(
        entry, listed.at(listed.start().plusMinutes(minutes), listed.end().plusMinutes(minutes)));
    return Optional.of(listed.key() + " is listed " + minutes + " minutes off");
  }

  static Optional<String> swapped(Plan plan, Dice dice) {
    Sitting one = dice.pick(plan.sittings);
    List<Sitting> others =
        plan.sittings.stream().filter(other -> !other.visit.overlaps(one.visit)).toList();
    if (others.isEmpty()) {
      return Optional.empty();
    }
    Sitting two = dice.pick(others);
    int first = plan.bookEntry(one);
    int second = plan.bookEntry(two);
    SimulatedVisit a = plan.book.get(first);
    SimulatedVisit b = plan.book.get(second);
    plan.book.set(first, a.at(b.start(), b.end()));
    plan.book.set(second, b.at(a.start(), a.end()));
    return Optional.of(a.key() + " and " + b.key() + " have changed places");
  }

  static Optional<String> cancelled(Plan plan, Dice dice) {
    Sitting sitting = dice.pick(plan.sittings);
    sitting.patient = DayMaker.stranger(plan, dice);
    sitting.known = false;
    sitting.token = null;
    if (plan.regime.folders()) {
      plan.patients.add(sitting.patient);
    }
    return Optional.of("somebody else came in place of " + sitting.visit.key());
  }

  static Optional<String> overrun(Plan plan, Dice dice) {
    List<Sitting> followed =
        plan.followed().stream()
            .filter(sitting -> end(sitting).equals(start(plan.after(sitting).orElseThrow())))
            .toList();
    if (followed.isEmpty()) {
      return Optional.empty();
    }
    Sitting sitting = dice.pick(followed);
    Sitting next = plan.after(sitting).orElseThrow();
    sitting.begins = end(sitting).minusMinutes(dice.between(0, 2));
    next.begins = end(sitting).plusMinutes(dice.between(16, 20));
    return Optional.of(sitting.visit.key() + " runs into the time of " + next.visit.key());
  }

  /** The list is that of the day before; some of the patients came then too. */
  static Optional<String> listOfYesterday(Plan plan, Dice dice) {
    List<SimulatedVisit> old = new ArrayList<>();
    for (SimulatedVisit visit : plan.book) {
      SimulatedPatient patient = dice.chance(0.3) ? visit.patient() : newStranger(plan, dice);
      LocalDateTime start = visit.start() == null ? null : visit.start().minusDays(1);
      LocalDateTime end = visit.end() == null ? null : visit.end().minusDays(1);
      old.add(
          new SimulatedVisit("Y" + visit.key(), patient, start, end, dice.token(), visit.chair()));
    }
    plan.book.clear();
    plan.book.addAll(old);
    return Optional.of("today's visits are not in the list");
  }

  /** Somebody whom no other stranger shares a number with either. */
  private static SimulatedPatient newStranger(Plan plan, Dice dice) {
    SimulatedPatient stranger = DayMaker.stranger(plan, dice);
    plan.patients.add(stranger);
    return stranger;
  }

  static Optional<String> sameNames(Plan plan, Dice dice) {
    Sitting one = dice.pick(plan.sittings);
    Sitting two = dice.pick(others(plan, one));
    SimulatedPatient namesake = new SimulatedPatient(two.patient.id(), one.patient.name());
    plan.book.replaceAll(
        visit -> visit.patient().id().equals(namesake.id()) ? visit.of(namesake) : visit);
    replace(plan, two, namesake);
    return Optional.of(one.visit.key() + " and " + two.visit.key() + " are namesakes");
  }

  /** One patient comes twice; the card of the one visit may be taken for the other. */
  static Optional<String> twiceADay(Plan plan, Dice dice) {
    Sitting one = dice.pick(plan.sittings);
    List<Sitting> later =
        plan.sittings.stream().filter(other -> !other.visit.overlaps(one.visit)).toList();
    if (later.isEmpty()) {
      return Optional.empty();
    }
    Sitting two = dice.pick(later);
    replace(plan, two, one.patient);
    boolean oldCard = plan.regime.cards() && dice.chance(0.5);
    if (oldCard) {
      two.token = one.token;
    }
    return Optional.of(
        one.visit.key()
            + " and "
            + two.visit.key()
            + " are the same patient"
            + (oldCard ? ", both with the card of the first" : ""));
  }

  static Optional<String> cardOfEarlierDay(Plan plan, Dice dice) {
    List<SimulatedVisit> earlier =
        plan.book.stream()
            .filter(
                visit ->
                    plan.sittings.stream().noneMatch(s -> s.visit.token().equals(visit.token())))
            .toList();
    if (earlier.isEmpty()) {
      return Optional.empty();
    }
    SimulatedVisit old = dice.pick(earlier);
    List<Sitting> own =
        plan.sittings.stream().filter(s -> s.patient.id().equals(old.patient().id())).toList();
    Sitting sitting = own.isEmpty() ? dice.pick(plan.sittings) : dice.pick(own);
    sitting.token = old.token();
    return Optional.of(sitting.visit.key() + " is taken with the card of " + old.key());
  }

  /** One phone goes to and fro between two chairs. */
  static Optional<String> twoChairs(Plan plan, Dice dice) {
    List<Sitting> followed = plan.followed();
    if (followed.isEmpty()) {
      return Optional.empty();
    }
    Sitting one = dice.pick(followed);
    Sitting two = plan.after(one).orElseThrow();
    SimulatedVisit first = one.visit;
    int entry = plan.bookEntry(two);
    SimulatedVisit listed = plan.book.get(entry);
    SimulatedVisit other = listed.inChair("3");
    plan.book.set(entry, plan.regime.times() ? other.at(first.start(), first.end()) : other);
    two.begins = one.begins.plus(Duration.ofSeconds(dice.between(15, 40)));
    return Optional.of(first.key() + " and " + two.visit.key() + " are taken at the same time");
  }

  private static List<Sitting> others(Plan plan, Sitting one) {
    return plan.sittings.stream().filter(other -> other != one).toList();
  }

  private static void replace(Plan plan, Sitting sitting, SimulatedPatient by) {
    plan.patients.replaceAll(patient -> patient.id().equals(sitting.patient.id()) ? by : patient);
    int entry = plan.bookEntry(sitting);
    plan.book.set(entry, plan.book.get(entry).of(by));
    sitting.patient = by;
  }

  private static LocalDateTime start(Sitting sitting) {
    return Objects.requireNonNull(sitting.visit.start());
  }

  private static LocalDateTime end(Sitting sitting) {
    return Objects.requireNonNull(sitting.visit.end());
  }
}
