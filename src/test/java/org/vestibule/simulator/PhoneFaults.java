package org.vestibule.simulator;

import java.time.Duration;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/** What is wrong with the phones themselves. */
final class PhoneFaults {

  private static final List<LocalDateTime> CLOCK_STARTS =
      List.of(
          LocalDateTime.of(1970, 1, 1, 0, 0),
          LocalDateTime.of(1980, 1, 1, 0, 0),
          LocalDateTime.of(2016, 1, 1, 0, 0));

  private PhoneFaults() {}

  static Optional<String> clockMinutes(Plan plan, Dice dice) {
    int minutes = dice.between(2, 45) * (dice.chance(0.5) ? 1 : -1);
    return clock(dice.pick(plan.phones), Duration.ofMinutes(minutes));
  }

  static Optional<String> clockHour(Plan plan, Dice dice) {
    return clock(dice.pick(plan.phones), Duration.ofHours(dice.chance(0.5) ? 1 : -1));
  }

  static Optional<String> clockDay(Plan plan, Dice dice) {
    return clock(dice.pick(plan.phones), Duration.ofDays(dice.chance(0.5) ? 1 : -1));
  }

  private static Optional<String> clock(Phone phone, Duration error) {
    phone.clockError = phone.clockError.plus(error);
    phone.errorAfterJump = phone.errorAfterJump.plus(error);
    return Optional.of("phone " + phone.number + " by " + error);
  }

  /** The battery was empty: the clock starts where its maker let it begin, some time in the day. */
  static Optional<String> clockReset(Plan plan, Dice dice) {
    Phone phone = dice.pick(plan.phones);
    LocalDateTime from = moment(plan, phone, dice);
    phone.jumpsAt = from;
    phone.errorAfterJump = Duration.between(from, dice.pick(CLOCK_STARTS));
    return Optional.of("phone " + phone.number + " at " + from);
  }

  /** The clock is set anew in the middle of the day. */
  static Optional<String> clockJumps(Plan plan, Dice dice) {
    Phone phone = dice.pick(plan.phones);
    phone.jumpsAt = moment(plan, phone, dice);
    Duration jump =
        Duration.ofMinutes(dice.between(10, 90)).multipliedBy(dice.chance(0.7) ? -1 : 1);
    phone.errorAfterJump = phone.errorAfterJump.plus(jump);
    return Optional.of("phone " + phone.number + " by " + jump + " at " + phone.jumpsAt);
  }

  static Optional<String> zoneMissing(Plan plan, Dice dice) {
    List<Phone> writing = plan.phones.stream().filter(phone -> phone.writesOffset).toList();
    if (writing.isEmpty()) {
      return Optional.empty();
    }
    Phone phone = dice.pick(writing);
    phone.writesOffset = false;
    return Optional.of("phone " + phone.number);
  }

  static Optional<String> otherZone(Plan plan, Dice dice) {
    Phone phone = dice.pick(plan.phones);
    phone.zone =
        ZoneId.of(
            dice.pick(List.of("Europe/London", "Europe/Athens", "America/New_York", "Asia/Tokyo")));
    return Optional.of(
        "phone "
            + phone.number
            + " in "
            + phone.zone
            + (phone.writesOffset ? ", stated" : ", unstated"));
  }

  static Optional<String> oneFolder(Plan plan, Dice dice) {
    plan.phones.forEach(phone -> phone.folder = "");
    return Optional.of(plan.phones.size() + " phones in the inbox itself");
  }

  /** Two phones of one model, in one folder. */
  static Optional<String> sameModel(Plan plan, Dice dice) {
    Phone first = plan.phones.get(0);
    for (Phone phone : plan.phones) {
      phone.folder = "";
      phone.model = first.model;
      phone.lens = first.lens;
      phone.writesOffset = first.writesOffset;
      phone.writesSubsecond = first.writesSubsecond;
      phone.naming = first.naming;
    }
    boolean near = dice.chance(0.5);
    if (near) {
      plan.phones.get(1).counter = first.counter + dice.between(0, 30);
    }
    return Optional.of(near ? "with numbers close together" : "with numbers apart");
  }

  static Optional<String> counterReset(Plan plan, Dice dice) {
    List<Phone> counting =
        plan.phones.stream().filter(phone -> phone.naming == Phone.Naming.COUNTER).toList();
    if (counting.isEmpty()) {
      return Optional.empty();
    }
    Phone phone = dice.pick(counting);
    phone.counterResetsAt = moment(plan, phone, dice);
    return Optional.of("phone " + phone.number + " at " + phone.counterResetsAt);
  }

  /** The time of one of its shots, but not of the first. */
  private static LocalDateTime moment(Plan plan, Phone phone, Dice dice) {
    List<LocalDateTime> times =
        plan.shots.stream()
            .filter(shot -> shot.phone == phone)
            .map(shot -> shot.at)
            .sorted()
            .toList();
    return times.isEmpty()
        ? plan.date.atTime(12, 0)
        : times.get(Math.min(times.size() - 1, dice.between(1, Math.max(1, times.size() - 1))));
  }
}
