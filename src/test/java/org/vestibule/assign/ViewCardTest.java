package org.vestibule.assign;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.vestibule.card.ViewCard;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.Tooth;

/** View cards settle a view only where no single mistake could have put it there. */
class ViewCardTest {

  private static final String TURNS =
      "view cards and photographs don't take turns one by one, so a card may have been forgotten";

  @Test
  void oneCardBeforeEachPhotograph() {
    CardRoll roll = series();
    assertThat(view(roll, "f")).isEqualTo("frontal");
    assertThat(view(roll, "r")).isEqualTo("right-buccal");
    assertThat(view(roll, "l")).isEqualTo("left-buccal");
    assertThat(roll.settled("r")).isEqualTo("VA");
  }

  @Test
  void photographsBeforeTheFirstViewCardHaveNoView() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .photo("x", "09:03")
            .view("frontal", "09:04")
            .photo("f", "09:05")
            .visit("VA", "09:28");
    assertThat(roll.of("x").view()).isEqualTo(SortedView.NONE);
    assertThat(view(roll, "f")).isEqualTo("frontal");
  }

  @Test
  void aForgottenNextCard() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .view("right-buccal", "09:03")
            .photo("r", "09:04")
            .photo("l", "09:05")
            .view("frontal", "09:06")
            .photo("f", "09:07")
            .visit("VA", "09:28");
    waits(roll, TURNS, "r", "l", "f");
    assertThat(roll.settled("r")).as("whose it is stays settled").isEqualTo("VA");
  }

  @Test
  void aLatePhotograph() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .view("right-buccal", "09:03")
            .view("left-buccal", "09:04")
            .photo("r", "09:05")
            .photo("l", "09:06")
            .visit("VA", "09:28");
    waits(roll, TURNS, "r", "l");
  }

  @Test
  void cardsPhotographedAfterInsteadOfBefore() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .photo("f", "09:03")
            .view("frontal", "09:04")
            .photo("r", "09:05")
            .view("right-buccal", "09:06")
            .photo("l", "09:07")
            .view("left-buccal", "09:08")
            .visit("VA", "09:28");
    waits(roll, TURNS, "r", "l");
    assertThat(view(roll, "f")).isNull();
  }

  @Test
  void anUnreadableCard() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .view("right-buccal", "09:03")
            .photo("r", "09:04")
            .unreadable("09:05")
            .photo("l", "09:06")
            .visit("VA", "09:28");
    waits(
        roll,
        "a view card stands before it, but that nothing is missing between the cards is not certain",
        "r",
        "l");
    assertThat(roll.settled("r")).isEmpty();
  }

  @Test
  void aLostFile() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .view("right-buccal", "09:03")
            .lost(2)
            .photo("l", "09:06")
            .visit("VA", "09:28");
    waits(
        roll,
        "a view card stands before it, but that nothing is missing between the cards is not certain",
        "l");
  }

  @Test
  void namesThatDoNotCount() {
    CardRoll roll =
        new CardRoll()
            .clockNames()
            .visit("VA", "09:02")
            .view("frontal", "09:03")
            .photo("f", "09:04")
            .visit("VA", "09:28");
    assertThat(roll.settled("f")).isEqualTo("VA");
    assertThat(view(roll, "f")).isNull();
  }

  @Test
  void theWrongCardOfAPair() {
    CardRoll twice =
        new CardRoll()
            .visit("VA", "09:02")
            .view("right-buccal", "09:03")
            .photo("r", "09:04")
            .view("right-buccal", "09:05")
            .photo("l", "09:06")
            .visit("VA", "09:28");
    waits(
        twice,
        "the view card before it was photographed twice in this visit, so once it may have been the"
            + " wrong one",
        "r",
        "l");
    CardRoll alone =
        new CardRoll()
            .visit("VA", "09:02")
            .view("right-buccal", "09:03")
            .photo("l", "09:04")
            .view("frontal", "09:05")
            .photo("f", "09:06")
            .visit("VA", "09:28");
    waits(
        alone,
        "the view card before it names a side or an arch, and the card of the other one was not"
            + " photographed in this visit, so it may have been the wrong one",
        "l");
    assertThat(view(alone, "f")).isEqualTo("frontal");
  }

  @Test
  void teethOnACardAreNotSettledByIt() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .view(
                new ViewCard(
                    "tooth-labial", Teeth.of(List.of(Tooth.ofIso(11).orThrow())), null, null, null),
                "09:03")
            .photo("t", "09:04")
            .visit("VA", "09:28");
    waits(roll, "the view card before it names teeth, and a card alone never settles those", "t");
  }

  @Test
  void withoutAClosingVisitCard() {
    CardRoll roll =
        new CardRoll()
            .rules(CardRoll.openingCard())
            .visit("VA", "09:02")
            .view("frontal", "09:03")
            .photo("f", "09:04");
    assertThat(roll.settled("f")).isEqualTo("VA");
    waits(roll, "view cards only count between two photographs of one visit's card", "f");
  }

  private static CardRoll series() {
    return new CardRoll()
        .visit("VA", "09:02")
        .view("frontal", "09:03")
        .photo("f", "09:04")
        .view("right-buccal", "09:05")
        .photo("r", "09:06")
        .view("left-buccal", "09:07")
        .photo("l", "09:08")
        .visit("VA", "09:28");
  }

  private static @Nullable String view(CardRoll roll, String label) {
    ViewCard card = roll.of(label).view().card();
    return card == null ? null : card.view();
  }

  private static void waits(CardRoll roll, String sentence, String... labels) {
    for (String label : labels) {
      WaitReason reason = roll.of(label).view().reason();
      assertThat(view(roll, label)).as(label).isNull();
      assertThat(reason == null ? "" : reason.sentence()).as(label).isEqualTo(sentence);
    }
  }
}
