package org.vestibule.simulator;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.vestibule.card.CardSighting;
import org.vestibule.card.VisitCard;

/** What goes wrong with the cards in front of the camera. */
final class CardFaults {

  private CardFaults() {}

  static Optional<String> missedOpening(Plan plan, Dice dice) {
    return missed(plan, dice, Shot.Role.OPENING);
  }

  static Optional<String> missedClosing(Plan plan, Dice dice) {
    return missed(plan, dice, Shot.Role.CLOSING);
  }

  private static Optional<String> missed(Plan plan, Dice dice, Shot.Role role) {
    return any(plan, dice, shot -> shot.role == role)
        .map(
            shot -> {
              plan.shots.remove(shot);
              return "of " + key(shot);
            });
  }

  /** Neither the closing card of the one nor the opening card of the next. */
  static Optional<String> missedSeparator(Plan plan, Dice dice) {
    List<Sitting> followed = plan.followed();
    if (followed.isEmpty()) {
      return Optional.empty();
    }
    Sitting sitting = dice.pick(followed);
    Sitting next = plan.after(sitting).orElseThrow();
    int before = plan.shots.size();
    plan.shots.removeIf(
        shot ->
            (shot.sitting == sitting && shot.role == Shot.Role.CLOSING)
                || (shot.sitting == next && shot.role == Shot.Role.OPENING));
    boolean gone = plan.shots.size() == before - 2;
    return gone
        ? Optional.of("between " + sitting.visit.key() + " and " + next.visit.key())
        : Optional.empty();
  }

  /** The card of a visit at another time; before, after, or both. */
  static Optional<String> wrongCard(Plan plan, Dice dice) {
    return wrongCard(plan, dice, (one, other) -> !one.overlaps(other));
  }

  /** The card of the visit in the other chair at the same time. */
  static Optional<String> cardOfOtherChair(Plan plan, Dice dice) {
    return wrongCard(plan, dice, SimulatedVisit::overlaps);
  }

  private interface Fits {
    boolean test(SimulatedVisit one, SimulatedVisit other);
  }

  private static Optional<String> wrongCard(Plan plan, Dice dice, Fits fits) {
    List<Sitting> possible =
        plan.sittings.stream()
            .filter(sitting -> plan.shots(sitting).stream().anyMatch(Shot::isVisitCard))
            .filter(sitting -> !others(plan, sitting, fits).isEmpty())
            .toList();
    if (possible.isEmpty()) {
      return Optional.empty();
    }
    Sitting sitting = dice.pick(possible);
    SimulatedVisit other = dice.pick(others(plan, sitting, fits)).visit;
    int which = plan.regime.closing() ? dice.between(1, 3) : 1;
    boolean shown = false;
    for (Shot shot : plan.shots(sitting)) {
      if ((shot.role == Shot.Role.OPENING && (which & 1) != 0)
          || (shot.role == Shot.Role.CLOSING && (which & 2) != 0)) {
        shot.shows(new VisitCard(other.token()));
        shown = true;
      }
    }
    return shown
        ? Optional.of(
            sitting.visit.key()
                + " with the card of "
                + other.key()
                + List.of(" before", " after", " before and after").get(which - 1))
        : Optional.empty();
  }

  private static List<Sitting> others(Plan plan, Sitting sitting, Fits fits) {
    return plan.sittings.stream()
        .filter(other -> other != sitting && fits.test(sitting.visit, other.visit))
        .toList();
  }

  static Optional<String> unreadable(Plan plan, Dice dice) {
    return sighting(
        plan,
        dice,
        new CardSighting.Refused(
            "A card is in the picture, and its code can't be read.", "Photograph the card again."));
  }

  static Optional<String> severalCards(Plan plan, Dice dice) {
    return sighting(
        plan,
        dice,
        new CardSighting.Refused(
            "Two cards are in the picture.", "Photograph one card at a time."));
  }

  static Optional<String> notSeen(Plan plan, Dice dice) {
    return sighting(plan, dice, new CardSighting.NoCard());
  }

  private static Optional<String> sighting(Plan plan, Dice dice, CardSighting sighting) {
    return any(plan, dice, Shot::isVisitCard)
        .map(
            shot -> {
              shot.sighting = sighting;
              return "at the "
                  + (shot.role == Shot.Role.OPENING ? "start" : "end")
                  + " of "
                  + key(shot);
            });
  }

  static Optional<String> viewCardNotSeen(Plan plan, Dice dice) {
    return any(plan, dice, shot -> shot.role == Shot.Role.VIEW_CARD)
        .map(
            shot -> {
              shot.sighting = new CardSighting.NoCard();
              return "in " + key(shot);
            });
  }

  static Optional<String> viewCardMissed(Plan plan, Dice dice) {
    return any(plan, dice, shot -> shot.role == Shot.Role.VIEW_CARD)
        .map(
            shot -> {
              plan.shots.remove(shot);
              return "in " + key(shot);
            });
  }

  static Optional<String> viewCardWrong(Plan plan, Dice dice) {
    Optional<Shot> shot = any(plan, dice, card -> card.role == Shot.Role.VIEW_CARD);
    shot.ifPresent(
        card ->
            card.shows(
                dice.pick(
                    ShotMaker.VIEWS.stream()
                        .map(ShotMaker.View::card)
                        .filter(other -> !new Subject.OfCard(other).equals(card.subject))
                        .toList())));
    return shot.map(card -> "in " + key(card));
  }

  /** A card lies beside the patient in a clinical photograph. */
  static Optional<String> cardInClinicalPhoto(Plan plan, Dice dice) {
    Optional<Shot> photo = any(plan, dice, shot -> shot.role == Shot.Role.PHOTO);
    photo.ifPresent(
        shot -> {
          String token = dice.pick(plan.sittings).visit.token();
          if (dice.chance(0.5) && shot.sitting != null && shot.sitting.token != null) {
            token = shot.sitting.token;
          }
          shot.sighting = new CardSighting.OneCard(new VisitCard(token));
        });
    return photo.map(shot -> "in " + key(shot));
  }

  static Optional<String> twice(Plan plan, Dice dice) {
    return any(plan, dice, Shot::isVisitCard)
        .map(
            shot -> {
              Duration after = Duration.ofMillis(dice.between(1_500, 5_000));
              plan.shots.add(
                  new Shot(shot.role, shot.sitting, shot.phone, shot.at.plus(after), shot.subject));
              return "in " + key(shot);
            });
  }

  static Optional<String> byOtherPhone(Plan plan, Dice dice) {
    return any(plan, dice, Shot::isVisitCard)
        .map(
            first -> {
              List<Shot> cards =
                  plan.shots.stream()
                      .filter(shot -> shot.isVisitCard() && shot.sitting == first.sitting)
                      .toList();
              boolean both = dice.chance(0.5);
              for (Shot shot : cards) {
                if (both || shot == first) {
                  shot.phone = plan.phones.get(shot.phone == plan.phones.get(0) ? 1 : 0);
                }
              }
              return (both ? "all" : "one") + " of " + key(first);
            });
  }

  private static Optional<Shot> any(Plan plan, Dice dice, Predicate<Shot> wanted) {
    List<Shot> found = plan.shots.stream().filter(wanted).toList();
    return found.isEmpty() ? Optional.empty() : Optional.of(dice.pick(found));
  }

  private static String key(Shot shot) {
    return shot.sitting == null ? "nobody" : shot.sitting.visit.key();
  }
}
