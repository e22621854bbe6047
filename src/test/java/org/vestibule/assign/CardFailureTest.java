package org.vestibule.assign;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.vestibule.card.CardSighting;
import org.vestibule.card.VisitCard;

/**
 * The ways in which photographs come under a wrong patient (common practice, no source): a missed
 * separator, a late photograph, two chairs or phones, a wrong clock, an unreadable code, same
 * names, a stale schedule, an edited time. Each waits, and says why in words for people.
 */
class CardFailureTest {

  private static final String OPENED =
      "its visit's card was photographed before it, but not again after it, so nobody can tell where"
          + " the visit ends";
  private static final String OUTSIDE =
      "it was not taken between two photographs of one visit's card: a card was forgotten, or it was"
          + " taken before its visit's card or after the last one";
  private static final String OTHER_CARD =
      "another visit's card was photographed between the photographs of its own visit's card";
  private static final String MIXED =
      "the file numbers don't run in the order of the times, so two phones of one model may share"
          + " the folder, or a clock or a file's time was changed";
  private static final String SAME_TIME =
      "another patient has a visit at the same time, so the time does not confirm the card";

  @Test
  void aSoundMorningSettlesEveryVisit() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .photo("a1", "09:03")
            .photo("a2", "09:20")
            .visit("VA", "09:28")
            .visit("VB", "09:47", "09:47:05")
            .photo("b1", "09:50")
            .visit("VB", "10:10");

    assertThat(roll.settled("a1")).isEqualTo("VA");
    assertThat(roll.settled("a2")).isEqualTo("VA");
    assertThat(roll.settled("b1")).isEqualTo("VB");
    assertThat(roll.of("a1").facts())
        .containsExactly(
            "between two photographs of its visit's card",
            "everything from the first card on was taken during that visit");
    assertThat(roll.sorting().notes()).isEmpty();
  }

  @Test
  void missedClosingCard() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .photo("a", "09:03")
            .visit("VB", "09:47")
            .photo("b", "09:50")
            .visit("VB", "10:10");

    assertThat(roll.why("a")).containsExactly(OPENED);
    assertThat(roll.proposed("a")).isEqualTo("VA");
    assertThat(roll.settled("b")).isEqualTo("VB");
  }

  @Test
  void missedOpeningCard() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .photo("a", "09:03")
            .visit("VA", "09:28")
            .photo("b", "09:50")
            .visit("VB", "10:10");

    assertThat(roll.settled("a")).isEqualTo("VA");
    assertThat(roll.why("b")).containsExactly(OUTSIDE);
  }

  @Test
  void missedBothCardsOfAVisit() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .photo("a", "09:03")
            .visit("VA", "09:28")
            .photo("b", "09:50")
            .visit("VC", "10:32")
            .photo("c", "10:40")
            .visit("VC", "10:50");

    assertThat(roll.settled("a")).isEqualTo("VA");
    assertThat(roll.why("b")).containsExactly(OUTSIDE);
    assertThat(roll.settled("c")).isEqualTo("VC");
  }

  @Test
  void twoPatientsRunTogetherAndTheFirstCardComesAgain() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .photo("a", "09:03")
            .photo("b", "09:50")
            .visit("VA", "10:10");

    assertThat(roll.why("a"))
        .containsExactly(
            "2 of 4 pictures from the first card on were taken outside the visit of the card");
    assertThat(roll.why("b")).isEqualTo(roll.why("a"));
    assertThat(roll.proposed("b")).isEmpty();
  }

  @Test
  void aCardMissingInTheMiddle() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .photo("a1", "09:03")
            .visit("VA", "09:10")
            .photo("x", "09:15")
            .visit("VA", "09:20");

    assertThat(roll.why("a1"))
        .containsExactly(
            "its visit's card was photographed an odd number of times, so one photograph of it is"
                + " missing and nobody can tell which");
    assertThat(roll.why("x")).isEqualTo(roll.why("a1"));
  }

  @Test
  void lateAfterTheLastCard() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .photo("a", "09:03")
            .visit("VA", "09:25")
            .photo("late", "09:26");

    assertThat(roll.settled("a")).isEqualTo("VA");
    assertThat(roll.why("late")).containsExactly(OUTSIDE);
  }

  @Test
  void lateAfterTheNextCard() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .photo("a", "09:03")
            .visit("VA", "09:25")
            .visit("VB", "09:27")
            .photo("late", "09:29")
            .photo("b", "09:50")
            .visit("VB", "10:10");

    assertThat(roll.settled("a")).isEqualTo("VA");
    assertThat(roll.why("late"))
        .containsExactly(
            "2 of 4 pictures from the first card on were taken outside the visit of the card");
    assertThat(roll.why("b")).isEqualTo(roll.why("late"));
  }

  @Test
  void oneChairsPatientBetweenTheCardsOfAnother() {
    CardRoll roll =
        new CardRoll()
            .visits(
                """
                visit,patient id,name,start,end
                VA,00417,"Ash, Ida",2026-03-11 09:00,09:30
                VB,00562,"Elm, Bo",2026-03-11 09:10,09:40
                """)
            .drawn()
            .visit("VA", "09:02")
            .photo("a", "09:03")
            .photo("b", "09:15")
            .visit("VA", "09:28");

    assertThat(roll.why("a")).containsExactly(SAME_TIME);
    assertThat(roll.proposed("a")).as("the card and the time both allow it").isEmpty();
  }

  @Test
  void aPhoneThatStaysAtItsChair() {
    String visits =
        """
        visit,patient id,name,start,end,chair
        VA,00417,"Ash, Ida",2026-03-11 09:00,09:30,1
        VB,00562,"Elm, Bo",2026-03-11 09:10,09:40,2
        """;
    SortingRules stays =
        new SortingRules(
            false, false, Duration.ZERO, List.of(), List.of(new PhoneChair("one", "", "1")));
    CardRoll roll =
        new CardRoll()
            .visits(visits)
            .drawn()
            .rules(stays)
            .phone("one/", "P1", 100)
            .visit("VA", "09:02")
            .photo("a", "09:12")
            .visit("VA", "09:28");
    CardRoll wrongChair =
        new CardRoll()
            .visits(visits)
            .drawn()
            .rules(stays)
            .phone("one/", "P1", 100)
            .visit("VB", "09:12")
            .photo("b", "09:13")
            .visit("VB", "09:28");

    assertThat(roll.settled("a")).isEqualTo("VA");
    assertThat(wrongChair.why("b"))
        .containsExactly("the visit's card was photographed with the phone of another chair");
  }

  @Test
  void twoVisitsCardsRunThroughEachOther() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .photo("a", "09:03")
            .visit("VB", "09:10")
            .photo("b", "09:12")
            .visit("VA", "09:28")
            .visit("VB", "09:50");

    assertThat(roll.why("a")).contains(OTHER_CARD);
    assertThat(roll.why("b")).contains(OTHER_CARD);
  }

  @Test
  void twoPhonesOfOneModelInOneFolder() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .photo("a1", "09:03")
            .photo("a2", "09:05")
            .visit("VA", "09:28")
            .phone("", "P1", 7711)
            .photo("other", "09:04");

    assertThat(roll.why("a1")).containsExactly(MIXED);
    assertThat(roll.why("a2")).containsExactly(MIXED);
    assertThat(roll.why("other")).containsExactly(MIXED);
  }

  @Test
  void theCardOnOnePhoneAndThePhotographsOnAnother() {
    CardRoll roll =
        new CardRoll().visit("VA", "09:02", "09:28").phone("", "P2", 500).photo("a", "09:03");

    assertThat(roll.settled("a")).isEmpty();
    assertThat(roll.of("a")).as("no card on this phone says anything").isEqualTo(Sorted.NONE);
  }

  @Test
  void aClockThatIsAnHourBehind() {
    CardRoll roll =
        new CardRoll()
            .visit("VB", "08:47")
            .photo("b", "08:50")
            .visit("VB", "09:10")
            .visit("VC", "09:32")
            .photo("c", "09:50")
            .visit("VC", "09:58");

    assertThat(roll.why("b"))
        .containsExactly(
            "3 of 3 pictures from the first card on were taken outside the visit of the card");
    assertThat(roll.settled("c")).as("9:50 is another patient's time").isEmpty();
    assertThat(roll.sorting().notes())
        .containsExactly(
            "the clock of a P1 seems to be wrong: its visit cards fit their visits if 60 minutes are"
                + " added; if that is so, a person states it in the settings");
  }

  @Test
  void aCorrectedClock() {
    CardRoll roll =
        new CardRoll()
            .rules(
                new SortingRules(
                    false,
                    false,
                    Duration.ZERO,
                    List.of(new ClockCorrection("", "P1", Duration.ofHours(1), "Ann Oak")),
                    List.of()))
            .visit("VB", "08:47")
            .photo("b", "08:50")
            .visit("VB", "09:10");

    assertThat(roll.settled("b")).isEqualTo("VB");
    assertThat(roll.of("b").facts())
        .contains("the phone's clock corrected by +60 minutes, as stated by Ann Oak");
    assertThat(roll.sorting().notes()).isEmpty();
  }

  @Test
  void theHourThatCameTwice() {
    CardRoll roll =
        new CardRoll()
            .visits(
                """
                visit,patient id,name,start,end
                VN,00417,"Ash, Ida",2026-10-25 02:00,02:50
                """)
            .drawn()
            .day(LocalDate.of(2026, 10, 25))
            .visit("VN", "02:05")
            .photo("n", "02:10")
            .visit("VN", "02:20");

    assertThat(roll.why("n"))
        .containsExactly(
            "of a picture between the cards, its time fell in the doubled hour when clocks were set"
                + " back, and it has no zone");
  }

  @Test
  void anUnreadableCardBetweenTheCards() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .photo("a", "09:03")
            .unreadable("09:10")
            .photo("b", "09:12")
            .visit("VA", "09:28");

    assertThat(roll.why("a"))
        .containsExactly(
            "between the cards there is a picture with a card that can't be read, or one that can't be"
                + " opened: it may be the card of another visit");
    assertThat(roll.why("b")).isEqualTo(roll.why("a"));
  }

  @Test
  void aClosingCardThatCantBeRead() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .photo("a", "09:03")
            .unreadable("09:28")
            .visit("VB", "09:47")
            .photo("b", "09:50")
            .visit("VB", "10:10");

    assertThat(roll.why("a")).hasSize(2).contains(OPENED);
    assertThat(roll.settled("b")).isEqualTo("VB");
  }

  @Test
  void aCardThatWasNotDrawnHere() {
    CardRoll roll = new CardRoll().visit("VX", "09:02").photo("a", "09:03").visit("VX", "09:28");

    assertThat(roll.why("a"))
        .containsExactly("the visit card beside it is none that was drawn here");
  }

  @Test
  void theCardOfANamesake() {
    CardRoll roll =
        new CardRoll()
            .visits(
                """
                visit,patient id,name,start,end
                VA,00417,"Ash, Ida",2026-03-11 09:00,09:30
                VI,00999,"Ash, Ida",2026-03-11 10:00,10:30
                """)
            .drawn()
            .visit("VA", "10:02")
            .photo("i", "10:03")
            .visit("VA", "10:28");

    assertThat(roll.why("i"))
        .containsExactly(
            "3 of 3 pictures from the first card on were taken outside the visit of the card; another"
                + " patient of the same name has a visit then");
    assertThat(roll.of("i").reasons().get(0).advice())
        .isEqualTo("find out which of the two patients it was; then file the photographs by hand");
  }

  @Test
  void aVisitThatWasMoved() {
    CardRoll roll =
        new CardRoll()
            .visits(
                """
                visit,patient id,name,start,end
                VA,00417,"Ash, Ida",2026-03-11 11:00,11:30
                """)
            .visit("VA", "09:02")
            .photo("a", "09:03")
            .visit("VA", "09:28");

    assertThat(roll.why("a"))
        .containsExactly(
            "3 of 3 pictures from the first card on were taken outside the visit of the card");
  }

  @Test
  void aVisitThatBecameAnotherPatients() {
    CardRoll roll =
        new CardRoll()
            .visits(
                """
                visit,patient id,name,start,end
                VA,00562,"Elm, Bo",2026-03-11 09:00,09:30
                """)
            .visit("VA", "09:02")
            .photo("a", "09:03")
            .visit("VA", "09:28");

    assertThat(roll.why("a"))
        .containsExactly(
            "the visit list has another patient or another day for this visit than when its card was"
                + " drawn");
  }

  @Test
  void aVisitThatIsNoLongerListed() {
    CardRoll roll =
        new CardRoll()
            .visits("visit,patient id,name,start,end\n")
            .visit("VA", "09:02")
            .photo("a", "09:03")
            .visit("VA", "09:28");

    assertThat(roll.why("a"))
        .containsExactly("the visit of the card beside it is no longer in the visit list");
  }

  @Test
  void aCardOfAnotherDay() {
    CardRoll roll =
        new CardRoll()
            .day(CardRoll.DAY.plusDays(1))
            .visit("VA", "09:02")
            .photo("a", "09:03")
            .visit("VA", "09:28");

    assertThat(roll.why("a"))
        .containsExactly("the card beside it is that of a visit on another day");
  }

  @Test
  void anEditedTime() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .photo("a", "09:03")
            .visit("VA", "09:28")
            .visit("VB", "09:47")
            .photo("b", "09:05")
            .visit("VB", "10:10");

    assertThat(roll.why("a")).containsExactly(MIXED);
    assertThat(roll.why("b")).containsExactly(MIXED);
  }

  @Test
  void anEditedTimeWhereNamesTellTheTime() {
    CardRoll roll =
        new CardRoll()
            .clockNames()
            .visit("VA", "09:02")
            .photo("a", "09:03")
            .named("IMG_20260311_095000.jpg")
            .photo("b", "09:05")
            .visit("VA", "09:28");

    assertThat(roll.why("a"))
        .containsExactly(
            "the time in a file's name is not the time inside the file, so one of them was changed");
  }

  @Test
  void aPhotographThatWasEdited() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .photo("a", "09:03")
            .edited()
            .photo("retouched", "09:05")
            .visit("VA", "09:28");

    assertThat(roll.settled("a")).isEqualTo("VA");
    assertThat(roll.proposed("retouched")).isEqualTo("VA");
    assertThat(roll.why("retouched"))
        .containsExactly(
            "it is a copy or was changed by a program, so neither its time nor its place between the"
                + " cards is sure");
  }

  @Test
  void aCardWithoutATime() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .photo("a", "09:03")
            .timeless("t", new CardSighting.OneCard(new VisitCard("t-VB")))
            .photo("b", "09:05")
            .visit("VA", "09:28");

    assertThat(roll.why("a"))
        .containsExactly(
            "a photograph of a card has no time, and it may belong between these cards");
  }

  @Test
  void aPhotographWithoutATime() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .photo("a", "09:03")
            .timeless("t", new CardSighting.NoCard())
            .visit("VA", "09:28");

    assertThat(roll.settled("a")).as("its number is not missing").isEqualTo("VA");
    assertThat(roll.why("t"))
        .containsExactly("it has no time, so nobody can tell between which cards it belongs");
  }

  @Test
  void aPhotographFiledUnderAnotherVisit() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .photo("a", "09:03")
            .filed("f", "09:04", "VB")
            .visit("VA", "09:28");

    assertThat(roll.why("a"))
        .containsExactly("a photograph between the cards is filed under another visit already");
    assertThat(roll.sorting().notes())
        .containsExactly(
            "between the cards of a visit on 2026-03-11 1 photographs are filed already, but the cards"
                + " now contradict that (a photograph between the cards is filed under another visit"
                + " already); look whether they are filed rightly");
  }

  @Test
  void aCardPhotographThatWasEdited() {
    CardRoll roll =
        new CardRoll().visit("VA", "09:02").photo("a", "09:03").edited().visit("VA", "09:28");

    assertThat(roll.why("a"))
        .containsExactly("a photograph of a card was changed by a program after it was taken");
  }

  @Test
  void aPhoneSetToAnotherZone() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .zone(ZoneOffset.ofHours(9))
            .photo("a", "09:03")
            .visit("VA", "09:28");

    assertThat(roll.why("a"))
        .containsExactly(
            "of a picture between the cards, the phone's clock was set to another time zone than the"
                + " site's");
  }

  @Test
  void theOwnZoneIsAsGoodAsNone() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .zone(ZoneOffset.ofHours(1))
            .photo("a", "09:03")
            .visit("VA", "09:28");

    assertThat(roll.settled("a")).isEqualTo("VA");
  }

  @Test
  void oneContentUnderTwoNamesCountsOnce() {
    CardRoll roll =
        new CardRoll().visit("VA", "09:02").photo("a", "09:03").again("b").visit("VA", "09:28");

    assertThat(roll.settled("a")).isEqualTo("VA");
    assertThat(roll.of("b")).isEqualTo(Sorted.NONE);
  }

  @Test
  void aDisputedVisit() {
    VisitList list = CardRoll.list(CardRoll.VISITS);
    Visit listed = list.byKey("VA").orElseThrow();
    Visit recorded = listed.of(new Patient("00417", "", "Ash^Other", null, Sex.NOT_SAID));
    CardRoll roll = new CardRoll().visit("VA", "09:02").photo("a", "09:03").visit("VA", "09:28");
    Sorting sorting = Sorting.sort(roll.cards(), list.with(List.of(recorded)), Practice.ZONE);

    assertThat(sorting.of(roll.name("a")).reasons())
        .extracting(WaitReason::sentence)
        .containsExactly("the visit list gives this patient's number another name than the record");
  }
}
