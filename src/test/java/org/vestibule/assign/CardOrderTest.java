package org.vestibule.assign;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.base.ContentHash;
import org.vestibule.card.CardSighting;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.intake.LeftOut;
import org.vestibule.intake.LeftOutKind;

/** The order of a phone's photographs, what shows that one is missing, and what does not. */
class CardOrderTest {

  /** Numbers 0001 to 9999 after four free characters: CIPA DC-009, from memory. */
  @ParameterizedTest
  @CsvSource({
    "IMG_2034.JPG, img_, 2034, false",
    "phone/_MG_0001.jpg, _mg_, 1, false",
    "DSCF9999.JPG, dscf, 9999, false",
    "IMG_E2034.JPG, img_, 2034, true",
    "IMG_2034 (1).JPG, img_, 2034, true",
    "IMG_2034~2.jpg, img_, 2034, true",
    "image0007.jpg, image, 7, false",
    "DSC_12045.JPG, dsc_, 12045, false",
    "2034.jpg, '', 2034, false"
  })
  void aNameThatCounts(String name, String series, int value, boolean copy) {
    assertThat(FileNumber.of(name))
        .get()
        .extracting(FileNumber::series, FileNumber::value, FileNumber::copy)
        .containsExactly(series, value, copy);
  }

  @ParameterizedTest
  @CsvSource({
    "IMG_20260514_101500.jpg",
    "20260514_101500.jpg",
    "PXL_20260514_101500123.jpg",
    "IMG_20260514_101500_001.jpg",
    "IMG_20260514_101500(0).jpg"
  })
  void aNameThatTellsTheTime(String name) {
    assertThat(NameClock.of(name)).contains(LocalDateTime.of(2026, 5, 14, 10, 15));
    assertThat(FileNumber.of(name)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"frontal.jpg", "IMG_12.jpg", "3F2A9C1E-77.jpg", "IMG_20261399_101500.jpg"})
  void aNameThatDoesNeither(String name) {
    assertThat(FileNumber.of(name)).isEmpty();
    assertThat(NameClock.of(name)).isEmpty();
  }

  @Test
  void theCounterRunsRound() {
    for (String first : List.of("IMG_0001.JPG", "IMG_0000.JPG")) {
      CardRoll roll =
          new CardRoll()
              .phone("", "P1", 9998)
              .visit("VA", "09:02")
              .photo("a1", "09:03")
              .named(first)
              .photo("a2", "09:04")
              .named(first.equals("IMG_0001.JPG") ? "IMG_0002.JPG" : "IMG_0001.JPG")
              .visit("VA", "09:28");
      assertThat(roll.settled("a1")).as(first).isEqualTo("VA");
      assertThat(roll.settled("a2")).as(first).isEqualTo("VA");
    }
    CardRoll gap =
        new CardRoll()
            .phone("", "P1", 9998)
            .visit("VA", "09:02")
            .photo("a1", "09:03")
            .named("IMG_0003.JPG")
            .visit("VA", "09:28");
    assertThat(gap.why("a1").get(0)).startsWith("2 file numbers are missing between the cards");
  }

  @Test
  void aStretchStaysOpenWhileNumbersAreMissing() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .photo("a1", "09:03")
            .lost(2)
            .photo("a2", "09:20")
            .lost(1)
            .visit("VA", "09:28");

    assertThat(roll.why("a1"))
        .containsExactly(
            "3 file numbers are missing between the cards: a photograph or a card may still be on its"
                + " way, or was deleted on the phone");
    assertThat(roll.proposed("a1")).isEqualTo("VA");
    assertThat(
            new CardRoll()
                .visit("VA", "09:02")
                .photo("a1", "09:03")
                .lost(1)
                .visit("VA", "09:28")
                .why("a1"))
        .containsExactly(
            "1 file number is missing between the cards: a photograph or a card may still be on its"
                + " way, or was deleted on the phone");
  }

  @Test
  void whatArrivesLaterClosesTheGapInWhateverOrder() {
    CardRoll roll =
        new CardRoll()
            .phone("", "P1", 2037)
            .visit("VA", "09:28")
            .phone("", "P1", 2034)
            .visit("VA", "09:02")
            .photo("a1", "09:03")
            .photo("a2", "09:20");

    assertThat(roll.settled("a1")).isEqualTo("VA");
    assertThat(roll.settled("a2")).isEqualTo("VA");
  }

  @Test
  void videosAndCopiesUseUpNumbers() {
    CardRoll roll =
        new CardRoll()
            .visit("VA", "09:02")
            .video()
            .photo("a1", "09:03")
            .named("IMG_E2036.JPG")
            .photo("copy", "09:03")
            .named("IMG_2037 (1).JPG")
            .photo("only a copy", "09:04")
            .lost(1)
            .visit("VA", "09:28");

    assertThat(roll.settled("a1")).isEqualTo("VA");
    assertThat(roll.settled("copy")).isEmpty();
    assertThat(roll.proposed("copy")).isEqualTo("VA");
  }

  @Test
  void aCompanionFileIsNoPhotograph() {
    for (String other : List.of("IMG_2036.AAE", "IMG_2036.MOV")) {
      CardRoll roll =
          new CardRoll().visit("VA", "09:02").photo("a1", "09:03").lost(1).visit("VA", "09:28");
      Seen heic =
          new Seen(
              "IMG_2036.HEIC",
              null,
              CaptureFacts.NONE,
              new CardSighting.Refused("it is HEIC", "convert it"),
              "");
      List<Seen> seen = new ArrayList<>(roll.cards().seen());
      seen.add(heic);
      RollCards cards = new RollCards(seen, Set.of(other), List.of(), SortingRules.STRICT);
      assertThat(Sorting.sort(cards, roll.visits(), Practice.ZONE).of(roll.name("a1")).reasons())
          .as(other)
          .extracting(WaitReason::sentence)
          .anyMatch(sentence -> sentence.startsWith("1 file number is missing"));
    }
  }

  @Test
  void aSiteMayCountGapsAsDeletions() {
    SortingRules deletions = new SortingRules(false, true, Duration.ZERO, List.of(), List.of());
    CardRoll roll =
        new CardRoll()
            .rules(deletions)
            .visit("VA", "09:02")
            .photo("a1", "09:03")
            .lost(2)
            .visit("VA", "09:28");

    assertThat(roll.settled("a1")).isEqualTo("VA");
    assertThat(roll.of("a1").facts())
        .contains("2 missing file numbers count as deleted by the site's setting");
  }

  @Test
  void aMarginWidensEveryVisit() {
    SortingRules margin =
        new SortingRules(false, false, Duration.ofMinutes(5), List.of(), List.of());
    CardRoll early =
        new CardRoll().rules(margin).visit("VA", "08:57").photo("a1", "09:03").visit("VA", "09:28");
    assertThat(early.settled("a1")).isEqualTo("VA");
    CardRoll close =
        new CardRoll()
            .visits(
                """
                visit,patient id,name,start,end
                VA,00417,"Ash, Ida",2026-03-11 09:00,09:30
                VB,00562,"Elm, Bo",2026-03-11 09:32,10:15
                """)
            .rules(margin)
            .visit("VA", "09:02")
            .photo("a1", "09:03")
            .visit("VA", "09:28");
    assertThat(close.why("a1"))
        .containsExactly(
            "another patient has a visit at the same time, so the time does not confirm the card");
  }

  @Test
  void namesThatTellTheTimeSettleWholeDaysOnly() {
    CardRoll whole =
        new CardRoll()
            .clockNames()
            .visit("VA", "09:02")
            .photo("a", "09:03")
            .visit("VA", "09:28")
            .visit("VB", "09:47")
            .photo("b", "09:50")
            .visit("VB", "10:10");
    assertThat(whole.settled("a")).isEqualTo("VA");
    assertThat(whole.settled("b")).isEqualTo("VB");

    CardRoll setBackDuringB =
        new CardRoll()
            .clockNames()
            .visit("VA", "09:02")
            .photo("a", "09:03")
            .visit("VA", "09:28")
            .visit("VB", "09:47")
            .photo("b", "09:20")
            .visit("VB", "09:40");
    assertThat(setBackDuringB.why("a"))
        .containsExactly(
            "this phone's file names don't count, and another of its visits on that day is not clear,"
                + " so its clock may have been changed in between");
    assertThat(setBackDuringB.why("b")).isEqualTo(setBackDuringB.why("a"));
  }

  @Test
  void namesInUniversalTimeAreNamesWithATime() {
    CardRoll roll =
        new CardRoll()
            .named("PXL_20260311_080200000.jpg")
            .visit("VA", "09:02")
            .named("PXL_20260311_080300000.jpg")
            .photo("a", "09:03")
            .named("PXL_20260311_082800000.jpg")
            .visit("VA", "09:28");
    assertThat(roll.settled("a")).isEqualTo("VA");
  }

  @Test
  void namesThatSayNothingLeaveTheClockAlone() {
    CardRoll roll =
        new CardRoll()
            .named("x.jpg")
            .visit("VA", "09:02")
            .named("y.jpg")
            .photo("a", "09:03")
            .named("z.jpg")
            .visit("VA", "09:28");
    assertThat(roll.why("a"))
        .containsExactly(
            "the file names neither count nor tell the time, so a clock alone says in which order they"
                + " were taken");
    CardRoll mixed =
        new CardRoll().visit("VA", "09:02").named("y.jpg").photo("a", "09:03").visit("VA", "09:28");
    assertThat(mixed.why("a"))
        .containsExactly(
            "file names of two kinds run through each other, so two phones may share the folder");
  }

  @Test
  void aPhoneThatDoesNotNameItself() {
    CardRoll roll =
        new CardRoll()
            .phone("", "", 100)
            .visit("VA", "09:02")
            .photo("a", "09:03")
            .visit("VA", "09:28");
    assertThat(roll.why("a")).containsExactly("the files don't say which phone took them");
  }

  @Test
  void bothLensesOfAPhoneAreOneDevice() {
    CaptureFacts rear = CaptureFacts.builder().make("Lumo").model("P1").lens("rear").build();
    CaptureFacts front = CaptureFacts.builder().make("Lumo").model("P1").lens("front").build();
    assertThat(Device.of("a/x.jpg", rear)).isEqualTo(Device.of("A/y.jpg", front));
    assertThat(Device.of("a/x.jpg", rear)).isNotEqualTo(Device.of("b/x.jpg", rear));
  }

  @Test
  void anUnreadPictureMayBeACard() {
    ContentHash hash = ContentHash.of("h".getBytes(StandardCharsets.UTF_8));
    CaptureFacts facts = CaptureFacts.builder().takenAt(LocalDateTime.MIN).build();
    LeftOut heic = new LeftOut("a.heic", LeftOutKind.HEIC, "it is HEIC", "convert it", hash, facts);
    assertThat(Seen.of(heic))
        .contains(
            new Seen(
                "a.heic", hash, facts, new CardSighting.Refused("it is HEIC", "convert it"), ""));
    assertThat(Seen.of(new LeftOut("a.mov", LeftOutKind.VIDEO, "a video", "none", null))).isEmpty();
  }
}
