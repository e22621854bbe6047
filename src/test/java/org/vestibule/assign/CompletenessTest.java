package org.vestibule.assign;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.vestibule.base.Outcome;
import org.vestibule.dental.AccessoryCatalogue;
import org.vestibule.dental.Series;
import org.vestibule.dental.SeriesCatalogue;
import org.vestibule.dental.SeriesSlot;
import org.vestibule.dental.Stage;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.ViewCatalogue;

class CompletenessTest {

  /**
   * How many photographs each series has: baseline 8 and restoration 4, common practice;
   * orthodontic 3 + 5 and aesthetic 1 + 3 + 3 + 3 + 2, guidelines, the last from memory.
   */
  @ParameterizedTest
  @CsvSource({
    "BASELINE, 8",
    "ORTHODONTIC, 8",
    "AESTHETIC, 12",
    "SINGLE_RESTORATION, 4",
    "SHADE, 1",
    "TRAUMA, 4",
    "LESION, 3"
  })
  void whatASeriesWants(Series series, int photographs) {
    assertThat(SeriesCatalogue.slots(series)).hasSize(photographs);
  }

  @ParameterizedTest
  @EnumSource
  void everyViewOfASlotIsKnownAndBelongsToTheSeries(Series series) {
    for (SeriesSlot slot : SeriesCatalogue.slots(series)) {
      for (String key : slot.views()) {
        assertThat(ViewCatalogue.standard().byKey(key)).as(key).isPresent();
      }
      if (!slot.accessory().isEmpty()) {
        assertThat(AccessoryCatalogue.find(slot.accessory())).isInstanceOf(Outcome.Done.class);
      }
    }
  }

  @Test
  void aWholeSeries() {
    Completeness whole =
        of(
            Series.ORTHODONTIC,
            "face-rest",
            "face-smile",
            "profile-left",
            "frontal",
            "right-buccal",
            "left-buccal",
            "upper-occlusal",
            "lower-occlusal");
    assertThat(whole.isComplete()).isTrue();
    assertThat(whole.words()).isEqualTo("series orthodontic: nothing is missing");
  }

  @Test
  void missingDoubledAndBesides() {
    Completeness part =
        of(
            Series.BASELINE,
            "frontal",
            "frontal",
            "right-buccal",
            "smile",
            "face-rest",
            "profile-right",
            "lips");
    assertThat(part.missing()).containsExactly("left buccal", "upper occlusal", "lower occlusal");
    assertThat(part.doubled()).containsExactly("Frontal, teeth together");
    assertThat(part.extra()).containsExactly("Lips and soft tissue");
    assertThat(part.words())
        .isEqualTo(
            "series baseline: missing left buccal, upper occlusal, lower occlusal; more than once:"
                + " Frontal, teeth together; besides: Lips and soft tissue");
  }

  @Test
  void aSecondProfileIsBesidesNotTwice() {
    Completeness both = of(Series.BASELINE, "profile-right", "profile-left");
    assertThat(both.doubled()).isEmpty();
    assertThat(both.extra()).containsExactly("Profile, left side seen");
  }

  @Test
  void aRestorationIsToldByItsStages() {
    Completeness half =
        Completeness.of(
            Series.SINGLE_RESTORATION,
            List.of(
                taken("upper-tooth-occlusal", Stage.BEFORE),
                taken("upper-tooth-occlusal", Stage.AFTER)));
    assertThat(half.missing()).containsExactly("isolated", "prepared");
    assertThat(half.doubled()).isEmpty();
  }

  @Test
  void aScaleIsWantedOnce() {
    TakenView plain = taken("lesion-palate-close-up", null);
    TakenView scale =
        new TakenView(
            plain.view(), Teeth.NONE, null, List.of(AccessoryCatalogue.find("ruler").orThrow()));
    TakenView around = taken("lesion-palate", null);
    assertThat(Completeness.of(Series.LESION, List.of(plain, scale, around)).missing()).isEmpty();
    assertThat(Completeness.of(Series.LESION, List.of(plain, around)).missing())
        .containsExactly("close-up with a scale");
  }

  @Test
  void theVisitListNamesSeriesAndChair() {
    VisitList list =
        CardRoll.list(
            """
            visit,patient id,name,start,end,series,chair
            VA,00417,"Ash, Ida",2026-03-11 09:00,09:30,Single-Restoration,2
            VB,00562,"Elm, Bo",2026-03-11 09:45,10:15,,
            """);
    assertThat(list.plan(list.byKey("va").orElseThrow()))
        .isEqualTo(new VisitPlan(Series.SINGLE_RESTORATION, "2"));
    assertThat(list.plan(list.byKey("VB").orElseThrow())).isEqualTo(VisitPlan.NONE);
    assertThat(list.with(List.of()).plan(list.byKey("VA").orElseThrow()).chair()).isEqualTo("2");
  }

  @Test
  void aSeriesThatIsNotKnown() {
    Outcome<VisitList> read =
        VisitList.parse(
            "visit,patient id,name,start,end,series\nVA,1,\"A, B\",2026-03-11 09:00,09:30,ortodontic\n"
                .getBytes(java.nio.charset.StandardCharsets.UTF_8),
            "list",
            "");
    assertThat(((Outcome.Refused<VisitList>) read).sentence())
        .isEqualTo(
            "row 2, column series: this is not a series that is known: did you mean \"orthodontic\"?");
  }

  private static Completeness of(Series series, String... views) {
    return Completeness.of(series, Stream.of(views).map(view -> taken(view, null)).toList());
  }

  private static TakenView taken(String view, @Nullable Stage stage) {
    return new TakenView(
        ViewCatalogue.standard().byKey(view).orElseThrow(), Teeth.NONE, stage, List.of());
  }
}
