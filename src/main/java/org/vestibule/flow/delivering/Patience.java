package org.vestibule.flow.delivering;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Predicate;
import org.vestibule.store.ledger.Deliveries;

/** Waits for what is due soon at one destination, as long as a run may. */
final class Patience {

  /** Before a destination is called again that could not be reached; then twice as long. */
  private static final Duration FIRST_PAUSE = Duration.ofMinutes(1);

  private final Clock clock;
  private final Deliveries deliveries;
  private final String destination;
  private final Instant ends;
  private final Predicate<Duration> wait;
  private Duration nextPause = FIRST_PAUSE;

  Patience(
      Clock clock,
      Deliveries deliveries,
      String destination,
      Duration patience,
      Duration limit,
      Predicate<Duration> wait) {
    this.clock = clock;
    this.deliveries = deliveries;
    this.destination = destination;
    this.ends = clock.instant().plus(patience.compareTo(limit) < 0 ? patience : limit);
    this.wait = wait;
  }

  /**
   * Waits until there is something to do.
   *
   * @param leftEarly true if the destination took nothing more
   * @return false if nothing is due soon enough
   */
  boolean waited(boolean leftEarly) {
    Instant now = clock.instant();
    Optional<Instant> due = deliveries.nextDue(destination);
    if (due.isEmpty()) {
      return false;
    }
    Instant next = due.get();
    if (leftEarly) {
      Instant again = now.plus(nextPause);
      nextPause = nextPause.multipliedBy(2);
      next = next.isBefore(again) ? again : next;
    }
    if (!next.isBefore(ends)) {
      return false;
    }
    // Times that are due are whole seconds; a second more, so that it is due then.
    Duration pause = Duration.between(now, next).plusSeconds(1);
    return wait.test(pause.isNegative() ? Duration.ofSeconds(1) : pause);
  }
}
