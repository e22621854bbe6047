package org.vestibule.simulator;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.vestibule.card.VisitCard;

/** What goes wrong with the photographs' order, and what gets between them. */
final class ShotFaults {

  private ShotFaults() {}

  /** The last photograph and the closing card come after the next patient's opening card. */
  static Optional<String> lateWithClosing(Plan plan, Dice dice) {
    return late(plan, dice, true);
  }

  /** A photograph comes after the next patient's card, though all was closed. */
  static Optional<String> lateAfterClosing(Plan plan, Dice dice) {
    return late(plan, dice, false);
  }

  private static Optional<String> late(Plan plan, Dice dice, boolean withClosing) {
    List<Sitting> possible =
        plan.followed().stream()
            .filter(sitting -> plan.shots(sitting, Shot.Role.PHOTO).size() > 1)
            .filter(sitting -> !withClosing || closed(plan, sitting))
            .toList();
    if (possible.isEmpty()) {
      return Optional.empty();
    }
    Sitting sitting = dice.pick(possible);
    Sitting next = plan.after(sitting).orElseThrow();
    List<Shot> photos = plan.shots(sitting, Shot.Role.PHOTO);
    List<Shot> nextShots = plan.shots(next);
    LocalDateTime after = nextShots.get(Math.min(nextShots.size() - 1, dice.between(0, 2))).at;
    photos.get(photos.size() - 1).at = after.plusSeconds(2);
    if (withClosing) {
      plan.shots(sitting, Shot.Role.CLOSING).get(0).at = after.plusSeconds(4);
    }
    return Optional.of("of " + sitting.visit.key() + " within " + next.visit.key());
  }

  private static boolean closed(Plan plan, Sitting sitting) {
    return !plan.shots(sitting, Shot.Role.CLOSING).isEmpty();
  }

  /** One more go after all was closed; the card perhaps again. */
  static Optional<String> retakes(Plan plan, Dice dice) {
    List<Sitting> possible = withPhotos(plan);
    if (possible.isEmpty()) {
      return Optional.empty();
    }
    Sitting sitting = dice.pick(possible);
    Shot first = dice.pick(plan.shots(sitting, Shot.Role.PHOTO));
    LocalDateTime at = plan.lastShot(sitting).plusSeconds(dice.between(20, 120));
    int count = dice.between(1, 3);
    for (int i = 0; i < count; i++) {
      // A burst: all within one second.
      add(plan, sitting, Shot.Role.PHOTO, at.plus(Duration.ofMillis(300L * i)), first.subject);
    }
    first.deleted = dice.chance(0.5);
    boolean again = closed(plan, sitting) && dice.chance(0.5);
    if (again) {
      Shot closing = plan.shots(sitting, Shot.Role.CLOSING).get(0);
      add(plan, sitting, Shot.Role.CLOSING, at.plusSeconds(9), closing.subject);
    }
    return Optional.of(count + " of " + sitting.visit.key() + (again ? ", closed again" : ""));
  }

  /** The patient goes, and comes back after the next one. */
  static Optional<String> returns(Plan plan, Dice dice) {
    List<Sitting> possible =
        plan.followed().stream()
            .filter(sitting -> !plan.shots(sitting, Shot.Role.PHOTO).isEmpty())
            .toList();
    if (possible.isEmpty()) {
      return Optional.empty();
    }
    Sitting sitting = dice.pick(possible);
    Sitting next = plan.after(sitting).orElseThrow();
    LocalDateTime at = plan.lastShot(next).plusSeconds(dice.between(60, 180));
    Shot photo = dice.pick(plan.shots(sitting, Shot.Role.PHOTO));
    boolean cards = plan.regime.cards() && sitting.token != null && dice.chance(0.5);
    if (cards && sitting.token != null) {
      Subject card = new Subject.OfCard(new VisitCard(sitting.token));
      add(plan, sitting, Shot.Role.OPENING, at, card);
      if (plan.regime.closing()) {
        add(plan, sitting, Shot.Role.CLOSING, at.plusSeconds(40), card);
      }
    }
    add(plan, sitting, Shot.Role.PHOTO, at.plusSeconds(20), photo.subject);
    return Optional.of(
        sitting.visit.key()
            + " after "
            + next.visit.key()
            + (cards ? ", with cards" : ", without a card"));
  }

  static Optional<String> deletedPhotos(Plan plan, Dice dice) {
    List<Shot> photos = plan.shots(Shot.Role.PHOTO);
    int count = Math.min(photos.size(), dice.between(1, 4));
    for (int i = 0; i < count; i++) {
      dice.pick(photos).deleted = true;
    }
    return count == 0 ? Optional.empty() : Optional.of("up to " + count);
  }

  static Optional<String> deletedCard(Plan plan, Dice dice) {
    List<Shot> cards = plan.shots.stream().filter(Shot::isVisitCard).toList();
    if (cards.isEmpty()) {
      return Optional.empty();
    }
    Shot card = dice.pick(cards);
    card.deleted = true;
    return Optional.of(card.role == Shot.Role.OPENING ? "an opening card" : "a closing card");
  }

  /** Private life between two visits. */
  static Optional<String> privateBetween(Plan plan, Dice dice) {
    Sitting sitting = dice.pick(plan.sittings);
    LocalDateTime at = plan.lastShot(sitting).plusSeconds(dice.between(60, 240));
    privateLife(plan, sitting.phone, at);
    return Optional.of("after " + sitting.visit.key());
  }

  /** Private life in the middle of a visit. */
  static Optional<String> privateWithin(Plan plan, Dice dice) {
    List<Sitting> possible = withPhotos(plan);
    if (possible.isEmpty()) {
      return Optional.empty();
    }
    Sitting sitting = dice.pick(possible);
    LocalDateTime at = dice.pick(plan.shots(sitting, Shot.Role.PHOTO)).at.plusSeconds(2);
    privateLife(plan, sitting.phone, at);
    return Optional.of("within " + sitting.visit.key());
  }

  private static void privateLife(Plan plan, Phone phone, LocalDateTime at) {
    plan.shots.add(new Shot(Shot.Role.PRIVATE, null, phone, at, new Subject.OfPrivateLife()));
  }

  /** A child is taken along and photographed within the parent's visit, with no card. */
  static Optional<String> familyWithoutCard(Plan plan, Dice dice) {
    return family(plan, dice, false);
  }

  /** A child is taken along and photographed within the parent's visit, with a card of its own. */
  static Optional<String> familyWithCard(Plan plan, Dice dice) {
    return family(plan, dice, true);
  }

  private static Optional<String> family(Plan plan, Dice dice, boolean ownCard) {
    List<Sitting> possible = withPhotos(plan).stream().filter(sitting -> sitting.known).toList();
    if (possible.isEmpty()) {
      return Optional.empty();
    }
    Sitting parent = dice.pick(possible);
    boolean inList = plan.lists(parent);
    SimulatedVisit listed = inList ? plan.book.get(plan.bookEntry(parent)) : parent.visit;
    SimulatedPatient child = DayMaker.stranger(plan, dice);
    SimulatedVisit visit =
        new SimulatedVisit(
            childKey(plan, parent),
            child,
            listed.start(),
            listed.end(),
            dice.token(),
            listed.chair());
    plan.patients.add(child);
    if (inList) {
      plan.book.add(visit);
    }
    LocalDateTime at = plan.shots(parent, Shot.Role.PHOTO).get(0).at.plusSeconds(1);
    Sitting sitting = new Sitting(visit, parent.phone, at);
    plan.sittings.add(sitting);
    Subject card = new Subject.OfCard(new VisitCard(visit.token()));
    if (ownCard && plan.regime.cards()) {
      add(plan, sitting, Shot.Role.OPENING, at, card);
    }
    Subject subject = ShotMaker.VIEWS.get(0).of(sitting);
    add(plan, sitting, Shot.Role.PHOTO, at.plusSeconds(1), subject);
    add(plan, sitting, Shot.Role.PHOTO, at.plusSeconds(2), subject);
    if (ownCard && plan.regime.closing()) {
      add(plan, sitting, Shot.Role.CLOSING, at.plusSeconds(3), card);
    }
    return Optional.of(child.id() + " within " + parent.visit.key());
  }

  /** A second child of one parent has another key. */
  private static String childKey(Plan plan, Sitting parent) {
    String key = "C" + parent.visit.key();
    boolean taken = plan.sittings.stream().anyMatch(other -> other.visit.key().equals(key));
    return taken ? key + "b" : key;
  }

  /** The phone of one chair is carried to the other, in the middle of a visit, and no card is. */
  static Optional<String> carried(Plan plan, Dice dice) {
    List<Sitting> possible =
        withPhotos(plan).stream().filter(one -> !elsewhere(plan, one).isEmpty()).toList();
    if (possible.isEmpty()) {
      return Optional.empty();
    }
    Sitting here = dice.pick(possible);
    Sitting there = dice.pick(elsewhere(plan, here));
    plan.shots.removeIf(shot -> shot.sitting == there && shot.role != Shot.Role.PHOTO);
    LocalDateTime at = plan.shots(here, Shot.Role.PHOTO).get(0).at.plusSeconds(1);
    for (Shot shot : plan.shots(there, Shot.Role.PHOTO)) {
      shot.phone = here.phone;
      shot.at = at;
      at = at.plus(Duration.ofMillis(900));
    }
    there.phone = here.phone;
    return Optional.of(there.visit.key() + " within " + here.visit.key());
  }

  /** Patients of the other chair who have their visit then. */
  private static List<Sitting> elsewhere(Plan plan, Sitting here) {
    LocalDateTime first = plan.shots(here, Shot.Role.PHOTO).get(0).at;
    return withPhotos(plan).stream()
        .filter(there -> there.phone != here.phone && there.visit.holds(first))
        .toList();
  }

  private static List<Sitting> withPhotos(Plan plan) {
    return plan.sittings.stream()
        .filter(sitting -> !plan.shots(sitting, Shot.Role.PHOTO).isEmpty())
        .toList();
  }

  private static void add(
      Plan plan, Sitting sitting, Shot.Role role, LocalDateTime at, Subject subject) {
    plan.shots.add(new Shot(role, sitting, sitting.phone, at, subject));
  }
}
