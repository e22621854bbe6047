package org.vestibule.simulator;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.card.Card;
import org.vestibule.card.ViewCard;
import org.vestibule.card.VisitCard;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.Mirror;

/**
 * Releases the shutter for each sitting: cards, views in a fixed order, now and then a second go.
 */
final class ShotMaker {

  private static final double SECOND_GO = 0.2;

  /** Views as they are usually taken (common practice, no source). */
  static final List<View> VIEWS =
      List.of(
          new View("frontal", Mirror.NONE, null),
          new View("right-buccal", Mirror.NONE, null),
          new View("left-buccal", Mirror.NONE, null),
          new View("upper-occlusal", Mirror.AS_SHOT, Incisors.TOP),
          new View("lower-occlusal", Mirror.AS_SHOT, Incisors.BOTTOM),
          new View("upper-anterior", Mirror.NONE, null),
          new View("smile", Mirror.NONE, null),
          new View("face-rest", Mirror.NONE, null));

  /** A view and how it is taken. */
  record View(String key, Mirror mirror, @Nullable Incisors incisors) {

    Subject of(Sitting sitting) {
      return new Subject.Clinical(sitting.patient.id(), sitting.visitKey(), key, mirror, incisors);
    }

    Card card() {
      return new ViewCard(key, null, mirror, incisors, null);
    }
  }

  private final Plan plan;
  private final Dice dice;

  private ShotMaker(Plan plan, Dice dice) {
    this.plan = plan;
    this.dice = dice;
  }

  static void make(Plan plan, Dice dice) {
    ShotMaker maker = new ShotMaker(plan, dice);
    plan.sittings.forEach(maker::sitting);
  }

  private void sitting(Sitting sitting) {
    LocalDateTime at = sitting.begins;
    if (plan.regime.cards() && sitting.token != null) {
      add(Shot.Role.OPENING, sitting, at, new Subject.OfCard(new VisitCard(sitting.token)));
      at = later(at);
    }
    int first = dice.between(0, 3);
    int last = Math.min(VIEWS.size() - 1, first + dice.between(1, 5));
    for (View view : VIEWS.subList(first, last + 1)) {
      if (plan.viewCards) {
        add(Shot.Role.VIEW_CARD, sitting, at, new Subject.OfCard(view.card()));
        at = later(at);
      }
      add(Shot.Role.PHOTO, sitting, at, view.of(sitting));
      at = later(at);
      if (dice.chance(SECOND_GO)) {
        add(Shot.Role.PHOTO, sitting, at, view.of(sitting));
        at = later(at);
      }
    }
    if (plan.regime.closing() && sitting.token != null) {
      add(Shot.Role.CLOSING, sitting, at, new Subject.OfCard(new VisitCard(sitting.token)));
    }
  }

  private void add(Shot.Role role, Sitting sitting, LocalDateTime at, Subject subject) {
    plan.shots.add(new Shot(role, sitting, sitting.phone, at, subject));
  }

  private LocalDateTime later(LocalDateTime at) {
    return at.plus(Duration.ofMillis(dice.between(6_000, 35_000)));
  }
}
