package org.vestibule.simulator;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.vestibule.card.CardSighting;
import org.vestibule.card.VisitCard;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.Mirror;

/** The scorer, by cases made by hand. */
class ScorerTest {

  private static final Subject PHOTO =
      new Subject.Clinical("10", "V1", "upper-occlusal", Mirror.AS_SHOT, Incisors.TOP);
  private static final Subject CARD = new Subject.OfCard(new VisitCard("T"));
  private static final Subject PRIVATE = new Subject.OfPrivateLife();
  private static final Sorted ASIDE = new Sorted.SetAside();
  private static final Sorted WAITS = new Sorted.Waits("a reason");

  @Test
  void patientAloneIsRight() {
    assertThat(score(PHOTO, filed("10", null, null))).isEqualTo(clinical(1, 0, 0, 0, 0, 0));
  }

  @Test
  void patientVisitAndViewAreRight() {
    Sorted all = new Sorted.Filed("10", "V1", "upper-occlusal", Mirror.AS_SHOT, Incisors.TOP);
    assertThat(score(PHOTO, all)).isEqualTo(withView(clinical(1, 0, 0, 0, 0, 0)));
  }

  @Test
  void otherPatientIsWrongWhateverElseFits() {
    assertThat(score(PHOTO, filed("11", "V1", "upper-occlusal")))
        .isEqualTo(withView(clinical(0, 1, 0, 0, 0, 0)));
  }

  @Test
  void otherVisitOfTheSamePatientIsWrong() {
    assertThat(score(PHOTO, filed("10", "V2", null))).isEqualTo(clinical(0, 1, 0, 0, 0, 0));
  }

  @Test
  void anyVisitIsWrongForAVisitThatNoListHas() {
    Subject walkIn = new Subject.Clinical("10", null, "smile", Mirror.NONE, null);
    assertThat(score(walkIn, filed("10", "V1", null))).isEqualTo(clinical(0, 1, 0, 0, 0, 0));
    assertThat(score(walkIn, filed("10", null, null))).isEqualTo(clinical(1, 0, 0, 0, 0, 0));
  }

  @Test
  void otherViewIsCountedApart() {
    assertThat(score(PHOTO, filed("10", "V1", "frontal")))
        .isEqualTo(withView(clinical(1, 0, 1, 0, 0, 0)));
  }

  @Test
  void otherMirrorOrIncisorsAreCountedAsAWrongSide() {
    Sorted direct = new Sorted.Filed("10", "V1", "upper-occlusal", Mirror.NONE, null);
    Sorted turned = new Sorted.Filed("10", "V1", "upper-occlusal", null, Incisors.BOTTOM);
    assertThat(score(PHOTO, direct)).isEqualTo(withView(clinical(1, 0, 0, 1, 0, 0)));
    assertThat(score(PHOTO, turned)).isEqualTo(withView(clinical(1, 0, 0, 1, 0, 0)));
  }

  @Test
  void waitingAndNoAnswerAreTheSame() {
    assertThat(score(PHOTO, WAITS)).isEqualTo(clinical(0, 0, 0, 0, 1, 0));
    assertThat(Scorer.score(day(PHOTO), Map.of())).isEqualTo(clinical(0, 0, 0, 0, 1, 0));
  }

  @Test
  void clinicalPhotographSetAsideIsCounted() {
    assertThat(score(PHOTO, ASIDE)).isEqualTo(clinical(0, 0, 0, 0, 0, 1));
  }

  @Test
  void cardsAreCountedByWhatBecameOfThem() {
    assertThat(score(CARD, ASIDE)).isEqualTo(new Score(1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 0, 0));
    assertThat(score(CARD, WAITS)).isEqualTo(new Score(1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0));
    assertThat(score(CARD, filed("10", "V1", null)))
        .isEqualTo(new Score(1, 0, 0, 0, 0, 0, 0, 0, 0, 1, 0, 0, 0));
  }

  @Test
  void privateLifeFiledToAPatientIsAWrongFiling() {
    assertThat(score(PRIVATE, filed("10", null, null)))
        .isEqualTo(new Score(1, 1, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0, 0));
    assertThat(score(PRIVATE, WAITS)).isEqualTo(new Score(1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0));
  }

  @Test
  void wrongFilingsAreToldWithTheTruth() {
    assertThat(Scorer.wrongs(day(PRIVATE), Map.of("a.jpg", filed("10", null, null))))
        .containsExactly(
            "a.jpg: Filed[patient=10, visit=null, view=null, mirror=null, incisors=null],"
                + " in truth OfPrivateLife[]");
  }

  @Test
  void whatIsFiledOnceStays() {
    SimulatedDay day = RollSimulator.day(3, Regime.BOTH_CARDS, List.of(Fault.OUT_OF_ORDER));
    Map<String, Sorted> sorted =
        Scorer.play(
            day,
            (seen, before) -> {
              assertThat(before.isEmpty()).isEqualTo(seen.run() == 1);
              Map<String, Sorted> answer = new HashMap<>();
              seen.photos()
                  .forEach(p -> answer.put(p.key(), filed("run " + seen.run(), null, null)));
              return answer;
            });
    assertThat(sorted).hasSameSizeAs(day.everything().photos());
    day.everything()
        .photos()
        .forEach(
            p -> assertThat(sorted).containsEntry(p.key(), filed("run " + p.run(), null, null)));
  }

  @Test
  void answerForAFileThatHasNotArrivedIsABug() {
    SimulatedDay day = day(PHOTO);
    assertThatThrownBy(() -> Scorer.play(day, (seen, before) -> Map.of("b.jpg", WAITS)))
        .hasMessage("b.jpg has not arrived yet");
  }

  @Test
  void shareIsOfTheClinicalPhotographs() {
    Score score = clinical(1, 0, 0, 0, 0, 0).plus(clinical(0, 0, 0, 0, 1, 0));
    assertThat(score.selfFiledShare()).isEqualTo(0.5);
    assertThat(score.rolls()).isEqualTo(2);
    assertThat(score.wrongRollsAtMost()).isCloseTo(1 - Math.sqrt(0.05), within(1e-9));
  }

  private static Sorted filed(String patient, @Nullable String visit, @Nullable String view) {
    return new Sorted.Filed(patient, visit, view, null, null);
  }

  private static Score clinical(
      long right, long wrong, long viewWrong, long sideWrong, long waits, long aside) {
    return new Score(1, wrong, 1, right, wrong, viewWrong, sideWrong, waits, aside, 0, 0, 0, 0);
  }

  /** The same, with a view claimed. */
  private static Score withView(Score score) {
    return score.plus(
        new Score(0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, score.filedRight(), score.filedWrong()));
  }

  private static Score score(Subject truth, Sorted sorted) {
    return Scorer.score(day(truth), Map.of("a.jpg", sorted));
  }

  private static SimulatedDay day(Subject truth) {
    SeenPhoto photo =
        new SeenPhoto(
            "",
            "a.jpg",
            "Norda",
            "Norda 5",
            null,
            null,
            null,
            null,
            Instant.EPOCH,
            false,
            new CardSighting.NoCard(),
            "content",
            1);
    SeenDay seen =
        new SeenDay(
            LocalDate.of(2026, 3, 2),
            ZoneId.of("UTC"),
            Regime.NOTHING,
            List.of(),
            List.of(),
            List.of(photo),
            1,
            Instant.EPOCH);
    return new SimulatedDay(1, List.of(), seen, Map.of("a.jpg", truth));
  }
}
