package org.vestibule.simulator;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Makes a day on which nothing goes wrong: phones, patients, visits, and when they really begin.
 */
final class DayMaker {

  /** How often two chairs work with a phone each. */
  private static final double TWO_PHONES = 0.5;

  private static final double VIEW_CARDS = 0.5;
  private static final double COUNTER_ABOUT_TO_WRAP = 0.05;
  private static final ZoneId SITE = ZoneId.of("Europe/Vienna");

  private static final List<String> FAMILY_NAMES =
      List.of(
          "Amberfeld",
          "Brockhusen",
          "Calderwick",
          "Dornleitner",
          "Elsingthorpe",
          "Farnaby",
          "Grunewolt",
          "Hollerbusch",
          "Ivarstad",
          "Jendryk",
          "Kestrelmann",
          "Lindenquist",
          "Morrowby",
          "Nachtweyde",
          "Oberthal",
          "Pellingham");

  private static final List<String> GIVEN_NAMES =
      List.of("Ada", "Bela", "Cleo", "Dario", "Enna", "Falk", "Gesa", "Hanno", "Ilka", "Jarne");

  private final Plan plan;
  private final Dice dice;
  private final Set<String> taken = new HashSet<>();

  private DayMaker(Plan plan, Dice dice) {
    this.plan = plan;
    this.dice = dice;
  }

  /**
   * A faultless day.
   *
   * @param twoPhones true if a fault needs two phones; otherwise chance decides
   * @param viewCards true if a fault needs view cards; otherwise chance decides
   */
  static Plan make(Regime regime, Dice dice, boolean twoPhones, boolean viewCards) {
    Plan plan = new Plan(regime, workday(dice), SITE);
    boolean two = dice.chance(TWO_PHONES) || twoPhones;
    boolean cards = dice.chance(VIEW_CARDS) || viewCards;
    plan.viewCards = regime.cards() && cards;
    plan.foldersByName = dice.chance(0.5);
    DayMaker maker = new DayMaker(plan, dice);
    maker.phones(two ? 2 : 1);
    plan.phones.forEach(phone -> maker.chair(phone, two ? dice.between(3, 5) : dice.between(4, 7)));
    maker.yesterday();
    return plan;
  }

  private static LocalDate workday(Dice dice) {
    LocalDate day = LocalDate.of(2025, 1, 1).plusDays(dice.between(0, 729));
    return day.getDayOfWeek() == DayOfWeek.SUNDAY ? day.plusDays(1) : day;
  }

  private void phones(int count) {
    for (int i = 1; i <= count; i++) {
      Phone phone = new Phone(i, plan.zone);
      phone.model = i == 1 ? "Norda 5" : "Norda 7 plus";
      phone.lens = dice.chance(0.8) ? phone.model + " back camera" : null;
      phone.folder = count == 1 ? "" : "surgery " + i;
      phone.naming = dice.chance(0.7) ? Phone.Naming.COUNTER : Phone.Naming.DATE_AND_TIME;
      phone.counter =
          dice.chance(COUNTER_ABOUT_TO_WRAP) ? dice.between(9950, 9999) : dice.between(1, 9000);
      phone.writesSubsecond = dice.chance(0.8);
      phone.writesOffset = dice.chance(0.7);
      plan.phones.add(phone);
    }
  }

  private void chair(Phone phone, int visits) {
    LocalDateTime start = plan.date.atTime(8, 0).plusMinutes(15L * dice.between(0, 3));
    for (int i = 0; i < visits; i++) {
      LocalDateTime end = start.plusMinutes(dice.pick(List.of(30, 45, 60)));
      SimulatedVisit visit = visit(newPatient(), start, end, phone.chair());
      plan.book.add(shownInList(visit));
      plan.sittings.add(new Sitting(visit, phone, start.plusMinutes(dice.between(2, 10))));
      start = end.plusMinutes(dice.pick(List.of(0, 0, 15)));
    }
  }

  /** Two visits of the day before: the list still has them. */
  private void yesterday() {
    if (!plan.regime.list()) {
      return;
    }
    LocalDateTime start = plan.date.minusDays(1).atTime(9, 0);
    plan.book.add(
        shownInList(visit(newPatient(), start, start.plusMinutes(30), plan.phones.get(0).chair())));
    SimulatedPatient again = dice.pick(plan.sittings).patient;
    plan.book.add(
        shownInList(
            visit(
                again, start.plusMinutes(30), start.plusMinutes(60), plan.phones.get(0).chair())));
  }

  private SimulatedVisit shownInList(SimulatedVisit visit) {
    return plan.regime.times() ? visit : visit.at(null, null);
  }

  private SimulatedVisit visit(
      SimulatedPatient patient,
      @Nullable LocalDateTime start,
      @Nullable LocalDateTime end,
      String chair) {
    return new SimulatedVisit(
        "V" + (plan.book.size() + 1), patient, start, end, dice.token(), chair);
  }

  private SimulatedPatient newPatient() {
    SimulatedPatient patient = patient(dice, taken);
    plan.patients.add(patient);
    return patient;
  }

  /** A patient whose number and name nobody else has. */
  static SimulatedPatient patient(Dice dice, Set<String> taken) {
    while (true) {
      String id = String.valueOf(dice.between(10_000, 99_999));
      String name = dice.pick(FAMILY_NAMES) + " " + dice.pick(GIVEN_NAMES);
      if (!taken.contains(id) && !taken.contains(name)) {
        taken.add(id);
        taken.add(name);
        return new SimulatedPatient(id, name);
      }
    }
  }

  /** A patient who is not on the list. */
  static SimulatedPatient stranger(Plan plan, Dice dice) {
    Set<String> taken = new HashSet<>();
    plan.patients.forEach(
        patient -> {
          taken.add(patient.id());
          taken.add(patient.name());
        });
    return patient(dice, taken);
  }
}
