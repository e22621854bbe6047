package org.vestibule.simulator;

import java.time.Duration;
import java.time.LocalDateTime;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;

/** A phone, its habits and what is wrong with it. */
final class Phone {

  /** How its files are called. */
  enum Naming {
    COUNTER,
    DATE_AND_TIME
  }

  final int number;
  String make = "Norda";
  String model = "";
  @Nullable String lens;
  String folder = "";
  Naming naming = Naming.COUNTER;
  int counter;
  boolean writesSubsecond;
  boolean writesOffset;

  /** The zone its clock is set to. */
  ZoneId zone;

  /** What is added to the true time. */
  Duration clockError = Duration.ZERO;

  /** From this true site time on another error applies; null if it never changes. */
  @Nullable LocalDateTime jumpsAt;

  Duration errorAfterJump = Duration.ZERO;

  /** From this true site time on its counter starts again at 1; null if it doesn't. */
  @Nullable LocalDateTime counterResetsAt;

  Phone(int number, ZoneId zone) {
    this.number = number;
    this.zone = zone;
  }

  /** The chair at which it stays, if nobody carries it about. */
  String chair() {
    return String.valueOf(number);
  }

  Duration errorAt(LocalDateTime siteTime) {
    return jumpsAt != null && !siteTime.isBefore(jumpsAt) ? errorAfterJump : clockError;
  }
}
