package org.vestibule.assign;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A site that accepts a card before the photographs, together with the visit's time. */
class OpeningCardTest {

  @Test
  void aCardBeforeIsEnough() {
    CardRoll roll = morning();
    assertThat(roll.settled("a")).isEqualTo("VA");
    assertThat(roll.settled("b")).isEqualTo("VB");
    assertThat(roll.of("a").facts())
        .startsWith(
            "after a photograph of its visit's card, which is enough by the site's setting");
  }

  @Test
  void aForgottenNextCardIsSeenByTheTime() {
    CardRoll roll =
        new CardRoll()
            .rules(CardRoll.openingCard())
            .visit("VA", "09:02")
            .photo("a", "09:03")
            .photo("b", "09:50")
            .visit("VC", "10:32");
    assertThat(roll.why("a"))
        .containsExactly(
            "1 of 3 pictures from the first card on were taken outside the visit of the card");
    assertThat(roll.of("a").reasons().get(0).advice())
        .isEqualTo(
            "check whether the visit was moved, the next card was forgotten, or the phone's clock is"
                + " wrong (daylight saving); correct the list or the clock setting, or file by hand");
  }

  @Test
  void whatLiesBeforeTheCardIsNotItsVisits() {
    CardRoll roll =
        new CardRoll().rules(CardRoll.openingCard()).photo("x", "09:01").visit("VA", "09:02");
    assertThat(roll.settled("x")).isEmpty();
    assertThat(roll.why("x")).hasSize(1);
  }

  @Test
  void aGapOrAnUnreadableCardLetsItWait() {
    CardRoll gap =
        new CardRoll()
            .rules(CardRoll.openingCard())
            .visit("VA", "09:02")
            .photo("a", "09:03")
            .lost(1)
            .photo("b", "09:20");
    assertThat(gap.settled("a")).isEmpty();
    CardRoll unreadable =
        new CardRoll()
            .rules(CardRoll.openingCard())
            .visit("VA", "09:02")
            .photo("a", "09:03")
            .unreadable("09:10")
            .photo("b", "09:20");
    assertThat(unreadable.settled("a")).isEmpty();
  }

  /**
   * The clock was set back while VB was photographed: her photograph comes after VA's by its time,
   * and only the number of her card is missing between them.
   */
  @Test
  void aGapLetsItWaitEvenIfGapsAreDeletions() {
    CardRoll roll =
        new CardRoll()
            .rules(new SortingRules(true, true, Duration.ZERO, List.of(), List.of()))
            .visit("VA", "09:02")
            .photo("a", "09:03")
            .visit("VB", "09:47")
            .photo("b", "09:10");
    assertThat(roll.settled("a")).isEmpty();
    assertThat(roll.settled("b")).isEmpty();
    assertThat(roll.why("b"))
        .containsExactly(
            "1 file number is missing between the cards: a photograph or a card may still be on its"
                + " way, or was deleted on the phone");
  }

  @Test
  void namesThatDoNotCountNeedTheClosingCard() {
    CardRoll roll =
        new CardRoll()
            .rules(CardRoll.openingCard())
            .clockNames()
            .visit("VA", "09:02")
            .photo("a", "09:03");
    assertThat(roll.why("a"))
        .containsExactly(
            "this phone's file names don't count, so a missing card would not be noticed, and the card"
                + " before it is not enough");
  }

  private static CardRoll morning() {
    return new CardRoll()
        .rules(CardRoll.openingCard())
        .visit("VA", "09:02")
        .photo("a", "09:03")
        .visit("VB", "09:47")
        .photo("b", "09:50");
  }
}
