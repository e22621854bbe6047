package org.vestibule.flow.delivering;

import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.random.RandomGenerator;
import org.vestibule.audit.AuditPeer;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Practice;
import org.vestibule.flow.RejectionNotes;
import org.vestibule.flow.delivering.DeliveryReport.OfDestination;
import org.vestibule.forward.Courier;
import org.vestibule.forward.DestinationRules;
import org.vestibule.forward.ForwardRules;
import org.vestibule.forward.Lines;
import org.vestibule.store.RunLock;
import org.vestibule.store.ledger.Deliveries;
import org.vestibule.store.ledger.DeliveryState;

/** Brings what is due to every archive. One delivery runs at a time, beside everything else. */
public final class Delivering {

  private final Practice practice;
  private final Lines lines;
  private final RandomGenerator random;
  private final String who;
  private final ForwardRules rules;
  private final Deliveries deliveries;

  /**
   * @param random for pauses and transaction UIDs; used by several threads
   * @param who stands in the history of deliveries
   */
  public Delivering(Practice practice, Lines lines, RandomGenerator random, String who) {
    this.practice = practice;
    this.lines = lines;
    this.random = random;
    this.who = who;
    this.rules = practice.settings().forward();
    this.deliveries = practice.store().ledger().deliveries();
  }

  /**
   * Delivers.
   *
   * @param only one destination's name; empty for all
   * @param patience how long to wait for what is due soon; zero not at all
   * @param wait waits, and is false if somebody ended that
   */
  @SuppressWarnings("try") // lock and door are held, not used
  public Outcome<DeliveryReport> run(
      Optional<String> only, Duration patience, Predicate<Duration> wait) throws IOException {
    Outcome<List<DestinationRules>> chosen = chosen(only);
    if (!(chosen instanceof Done<List<DestinationRules>> to)) {
      return ((Refused<List<DestinationRules>>) chosen).as();
    }
    Outcome<RunLock> locked = practice.store().lockDelivery();
    if (!(locked instanceof Done<RunLock> free)) {
      return ((Refused<RunLock>) locked).as();
    }
    List<String> warnings = new ArrayList<>();
    List<String> notes = new ArrayList<>();
    TurnedAway away = new TurnedAway(sentence -> {});
    try (RunLock lock = free.value();
        Lines.Door door = door(warnings, notes, away)) {
      makeNotes(warnings);
      List<OfDestination> came =
          new SideBySide(to.value().size()).each(to.value(), one -> deliver(one, patience, wait));
      int removed = new SourceRemoving(practice).run(warnings);
      away.sentences().forEach(who -> warnings.add("at the door for reports: " + who));
      return Outcome.done(new DeliveryReport(came, warnings, notes, removed));
    }
  }

  /** What would be done, without doing it: what is due at each destination. */
  public Outcome<DeliveryReport> plan(Optional<String> only) {
    return chosen(only)
        .map(
            to -> {
              to.forEach(one -> Courier.follow(deliveries, one.name()));
              return new DeliveryReport(
                  to.stream().map(one -> report(one, 0, Optional.empty())).toList(),
                  List.of(),
                  List.of(),
                  0);
            });
  }

  private Outcome<List<DestinationRules>> chosen(Optional<String> only) {
    if (rules.destinations().isEmpty()) {
      return Outcome.refused(
          "the settings name no archive, so there is nowhere to deliver to",
          "add a [[destination]] to vestibule.toml; docs/delivery.md says how");
    }
    List<DestinationRules> chosen =
        rules.destinations().stream()
            .filter(one -> only.isEmpty() || one.name().equals(only.get()))
            .toList();
    return chosen.isEmpty()
        ? Outcome.refused(
            "there is no destination \"" + only.orElse("") + "\"",
            "the settings name "
                + String.join(
                    ", ", rules.destinations().stream().map(DestinationRules::name).toList()))
        : Outcome.done(chosen);
  }

  /** Without the door, reports that come later are missed, and asked for again. */
  private Lines.Door door(List<String> warnings, List<String> notes, TurnedAway away) {
    if (rules.reports().isEmpty()) {
      return ReportDoors.NONE;
    }
    Outcome<Lines.Door> opened = ReportDoors.open(practice, lines, random, away);
    if (opened instanceof Done<Lines.Door> door) {
      return door.value();
    }
    Refused<Lines.Door> refused = (Refused<Lines.Door>) opened;
    if (refused.kind() == Outcome.Kind.BUSY) {
      notes.add(
          "this run did not listen for reports of storage commitment, which is well if \"vestibule"
              + " serve\" does: "
              + refused.reason());
    } else {
      warnings.add(
          "this run could not listen for reports of storage commitment: " + refused.sentence());
    }
    return ReportDoors.NONE;
  }

  /**
   * Notes that are missing are made while nobody else writes objects; else the next run does it.
   */
  @SuppressWarnings("try") // the lock is held, not used
  private void makeNotes(List<String> warnings) throws IOException {
    if (practice.store().lock("forward") instanceof Done<RunLock> free) {
      try (RunLock lock = free.value()) {
        new RejectionNotes(practice).all().forEach(refused -> warnings.add(refused.sentence()));
      } catch (IOException disk) {
        warnings.add(
            "a note that an object no longer counts could not be written ("
                + disk.getClass().getSimpleName()
                + "): see whether the disk is full; the next delivery makes it");
      }
    }
  }

  private OfDestination deliver(DestinationRules to, Duration patience, Predicate<Duration> wait)
      throws IOException {
    int before = deliveries.counts(to.name()).getOrDefault(DeliveryState.CONFIRMED, 0);
    Outcome<org.vestibule.forward.Archive> archive = lines.archive(to);
    if (!(archive instanceof Done<org.vestibule.forward.Archive> line)) {
      Courier.follow(deliveries, to.name());
      return report(
          to, before, Optional.of(((Refused<org.vestibule.forward.Archive>) archive).as()));
    }
    Patience patient =
        new Patience(practice.clock(), deliveries, to.name(), patience, rules.limit(), wait);
    org.vestibule.forward.Destination destination =
        new org.vestibule.forward.Destination(
            to,
            rules,
            new AuditedArchive(
                line.value(), practice.audit(), new AuditPeer(to.name(), "", "", "")),
            practice.store().ledger(),
            practice.store().objects(),
            new MadeNotes(practice.store().ledger())::note,
            who);
    Instant until = practice.clock().instant().plus(rules.limit());
    Optional<Refused<Void>> left;
    do {
      left = Courier.deliver(destination, practice.clock(), random, until);
    } while (patient.waited(left.isPresent()));
    return report(to, before, left);
  }

  private OfDestination report(DestinationRules to, int before, Optional<Refused<Void>> left) {
    var counts = deliveries.counts(to.name());
    return new OfDestination(
        to.name(),
        to.required(),
        Math.max(0, counts.getOrDefault(DeliveryState.CONFIRMED, 0) - before),
        counts,
        deliveries.deadEnds(to.name()),
        left);
  }
}
