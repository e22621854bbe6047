package org.vestibule.forward;

import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.random.RandomGenerator;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.store.ledger.Deliveries;
import org.vestibule.store.ledger.DeliveryRow;
import org.vestibule.store.ledger.DeliveryState;
import org.vestibule.store.ledger.Ledger;

/**
 * Brings what is due to one destination and asks for what is not confirmed, until nothing is due,
 * the destination takes nothing more, or the time is up.
 */
public final class Courier {

  private static final int BATCH = 50;
  private static final int ASKED_TOGETHER = 200;
  private static final int PAGE = 1000;

  /** So many sessions that break without an object taken, and it is the archive's trouble. */
  private static final int FRUITLESS_SESSIONS = 3;

  private final Destination to;
  private final Deliveries deliveries;
  private final Clock clock;
  private final Instant until;
  private final Sending sending;
  private final Confirmation confirmation;
  private final ReportSink reports;
  private final Set<Archive.Form> forms = new HashSet<>();
  private @Nullable ArchiveSession session;
  private int fruitless;
  private String unanswered = "";

  private Courier(Destination to, Clock clock, RandomGenerator random, Instant until) {
    this.to = to;
    this.deliveries = to.ledger().deliveries();
    this.clock = clock;
    this.until = until;
    RetryPauses pauses = new RetryPauses(to.all(), random);
    Changes changes = new Changes(to.all(), pauses, clock);
    ParcelReader reader = new ParcelReader(to.objects());
    Coercions coercions = new Coercions(reader);
    this.sending = new Sending(to, changes, reader, coercions, clock);
    this.confirmation =
        new Confirmation(to.rules(), deliveries, changes, pauses, coercions, random, to.who());
    this.reports = new LedgerReports(to.ledger(), changes, to.who());
  }

  /**
   * Delivers what is due.
   *
   * @param random for pauses and transaction UIDs
   * @param until nothing is begun after it
   * @return why the destination was left early; empty if everything that was due had its turn
   */
  public static Optional<Refused<Void>> deliver(
      Destination to, Clock clock, RandomGenerator random, Instant until) throws IOException {
    Courier courier = new Courier(to, clock, random, until);
    Optional<Refused<Void>> left;
    try {
      left = courier.deliver();
    } finally {
      courier.closeSession();
    }
    return courier.putOff(left);
  }

  /** What is due waits for as long as the archive asked for, but no longer than any pause lasts. */
  private Optional<Refused<Void>> putOff(Optional<Refused<Void>> left) {
    Optional<Instant> notBefore = to.archive().notBefore();
    if (notBefore.isEmpty()) {
      return left;
    }
    Instant now = clock.instant();
    Instant latest = now.plus(to.all().longestPause());
    Instant until = notBefore.get().isBefore(latest) ? notBefore.get() : latest;

    deliveries.putOff(to.rules().name(), until);
    long minutes = Duration.between(now, until).plusSeconds(59).toMinutes();
    String advice =
        "it is left alone for "
            + (minutes == 1 ? "a minute" : minutes + " minutes")
            + ", as it asked; the first run after that tries again";
    return left.map(why -> new Refused<>(why.reason(), advice));
  }

  /** Where reports of storage commitment go that arrive on an association of their own. */
  public static ReportSink reports(
      Ledger ledger, ForwardRules rules, String who, Clock clock, RandomGenerator random) {
    RetryPauses pauses = new RetryPauses(rules, random);
    return new LedgerReports(ledger, new Changes(rules, pauses, clock), who);
  }

  /** Lets the deliveries to a destination follow what happened here. */
  public static void follow(Deliveries deliveries, String destination) {
    int followed = PAGE;
    while (followed == PAGE) {
      followed = deliveries.outgoing().follow(destination, PAGE);
    }
  }

  private Optional<Refused<Void>> deliver() throws IOException {
    while (true) {
      follow(deliveries, to.rules().name());
      List<DeliveryRow> toSend = sending.isStopped() ? List.of() : toSend();
      List<DeliveryRow> toAsk =
          toSend.isEmpty() ? due(DeliveryState.SENT, ASKED_TOGETHER) : List.of();
      if (toSend.isEmpty() && toAsk.isEmpty()) {
        return stopped();
      }
      if (!clock.instant().isBefore(until)) {
        return Optional.of(new Refused<>("the time of this run is up", "the next run goes on"));
      }
      Optional<Refused<Void>> trouble = step(toSend, toAsk);
      if (trouble.isPresent()) {
        return trouble;
      }
    }
  }

  private Optional<Refused<Void>> step(List<DeliveryRow> toSend, List<DeliveryRow> toAsk)
      throws IOException {
    List<Sending.Packed> packed = sending.pack(toSend);
    if (packed.isEmpty() && toAsk.isEmpty()) {
      return Optional.empty();
    }
    Outcome<ArchiveSession> opened = session(Sending.Packed.forms(packed));
    if (!(opened instanceof Done<ArchiveSession> open)) {
      return Optional.of(unreachable(((Refused<ArchiveSession>) opened).as()));
    }
    boolean fruitful;
    boolean over;
    if (packed.isEmpty()) {
      Confirmation.Asked asked = confirmation.ask(open.value(), toAsk);
      unanswered = asked.trouble().isEmpty() ? unanswered : asked.trouble();
      over = asked.sessionOver();
      fruitful = asked.answered();
    } else {
      Sending.Sent sent = sending.send(open.value(), packed, until);
      over = sent.sessionOver();
      fruitful = !over || sent.accepted() > 0;
    }
    if (over) {
      closeSession();
    }
    fruitless = fruitful ? 0 : fruitless + 1;
    return fruitless == FRUITLESS_SESSIONS
        ? Optional.of(
            unreachable(
                new Refused<>(
                    "the connection broke " + FRUITLESS_SESSIONS + " times in a row",
                    "see in the archive's log why; the next run tries again")))
        : Optional.empty();
  }

  private List<DeliveryRow> toSend() {
    List<DeliveryRow> rows = new ArrayList<>(due(DeliveryState.WAITING, BATCH));
    rows.addAll(due(DeliveryState.FAILED, BATCH - rows.size()));
    return rows;
  }

  private List<DeliveryRow> due(DeliveryState state, int most) {
    return most == 0 ? List.of() : deliveries.due(to.rules().name(), state, clock.instant(), most);
  }

  /** The open session if it serves for these forms, else another one. */
  private Outcome<ArchiveSession> session(Set<Archive.Form> needed) {
    ArchiveSession open = session;
    if (open != null && forms.containsAll(needed)) {
      return Outcome.done(open);
    }
    closeSession();
    forms.addAll(needed);
    Outcome<ArchiveSession> opened = to.archive().open(Set.copyOf(forms), reports);
    if (opened instanceof Done<ArchiveSession> done) {
      session = done.value();
      deliveries.reached(to.rules().name(), true, "");
    }
    return opened;
  }

  private void closeSession() {
    ArchiveSession open = session;
    if (open != null) {
      session = null;
      open.close();
    }
  }

  private Refused<Void> unreachable(Refused<Void> why) {
    deliveries.reached(to.rules().name(), false, PlainLine.of(why.reason()));
    return why;
  }

  private Optional<Refused<Void>> stopped() {
    sending.settle();
    if (!sending.whyStopped().isEmpty()) {
      return Optional.of(
          new Refused<>(sending.whyStopped(), "mend that there; the next run tries again"));
    }
    return unanswered.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Refused<>(
                "the archive was asked what it keeps, and gave no answer: " + unanswered,
                "what was not answered is asked again by the next run"));
  }
}
