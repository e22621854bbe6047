package org.vestibule.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.dental.View;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.jpeg.Raster;

/**
 * Tilt on drawn mouths that were turned by known angles. Up to 2 degrees raters accept, 4 they mark
 * down (published, from memory).
 */
class TiltTest {

  @ParameterizedTest
  @ValueSource(doubles = {0, 1, 2, -2, 4, -4, 6, 10, -15, 30})
  void theAngleIsMeasured(double degrees) {
    assertThat(row(mouth().tilted(degrees)).degrees()).isCloseTo(Math.abs(degrees), within(0.5));
  }

  @ParameterizedTest
  @CsvSource({"0, false", "2, false", "-2, false", "4, true", "-4, true", "12, true"})
  void whatRatersAcceptIsNotSaidAndWhatTheyMarkDownIs(double degrees, boolean said) {
    assertThat(tilt(mouth().tilted(degrees)).isPresent()).isEqualTo(said);
  }

  @Test
  void itIsSaidInWords() {
    QualityFinding tilt = tilt(mouth().tilted(7)).orElseThrow();
    assertThat(tilt.threshold()).isEqualTo(3);
    assertThat(tilt.sentence())
        .matches(
            "The row of teeth slants by (6\\.[5-9]|7\\.[0-5]) degrees, more than 3\\.0: the phone was"
                + " tilted, or the bite itself slants\\.");
    assertThat(tilt.whatToDo())
        .isEqualTo(
            "Look at the patient. If the bite is level, hold the phone level with it and take it"
                + " again; nothing is straightened by the program.");
  }

  /** Reflections, a burnt-out tooth, a missing one and retractors at both sides. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 5, -8})
  void otherFaultsDoNotDisturbIt(double degrees) {
    MouthPicture mouth =
        mouth()
            .rectangle(260, 250, 80, 144, new Color(90, 40, 40))
            .rectangle(440, 270, 60, 100, Color.WHITE)
            .rectangle(300, 60, 60, 20, Color.WHITE)
            .rectangle(0, 100, 40, 460, new Color(205, 200, 196))
            .rectangle(840, 100, 40, 460, new Color(205, 200, 196));
    assertThat(row(mouth.tilted(degrees)).degrees()).isCloseTo(Math.abs(degrees), within(1.0));
  }

  @Test
  void theTurnOfTheFileDoesNotCount() {
    Raster preview = mouth().tilted(6).read().preview();
    int width = preview.width();
    int height = preview.height();
    boolean[] tooth = new boolean[width * height];
    boolean[] quarter = new boolean[width * height];
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        tooth[y * width + x] = ToothColour.is(preview.pixel(x, y));
        quarter[x * height + height - 1 - y] = tooth[y * width + x];
      }
    }
    ToothRow lying = ToothRow.in(tooth, width, height);
    ToothRow standing = ToothRow.in(quarter, height, width);
    assertThat(lying.isRow()).isTrue();
    assertThat(standing.isRow()).isTrue();
    assertThat(standing.degrees()).isCloseTo(lying.degrees(), within(0.3));
  }

  @Test
  void aShortPatchOrOneAtTheSideIsNoRow() {
    Color gums = new Color(176, 92, 92);
    MouthPicture oneTooth =
        mouth().rectangle(0, 0, 380, 660, gums).rectangle(520, 0, 360, 660, gums);
    assertThat(row(oneTooth).isRow()).isFalse();
    MouthPicture half = mouth().rectangle(0, 0, 400, 660, gums);
    assertThat(row(half).isRow()).isFalse();
    assertThat(reason(advice(half.tilted(10), Subject.LEVEL_ROW)))
        .isEqualTo(
            "No long row of teeth lies in the middle of the picture, so that nothing shows what is"
                + " level.");
    MouthPicture none = mouth().rectangle(0, 0, 880, 660, gums);
    assertThat(reason(advice(none, Subject.LEVEL_ROW))).startsWith("No long row of teeth");
  }

  @ParameterizedTest
  @ValueSource(strings = {"UNKNOWN", "FACE", "MOUTH"})
  void onlyARowFromTheFrontIsJudged(Subject subject) {
    QualityAdvice advice = advice(mouth().tilted(12), subject);
    assertThat(advice.finding(QualityKind.TILT)).isEmpty();
    assertThat(reason(advice))
        .isEqualTo(
            "Only a row of teeth from the front shows whether the phone was level: a file doesn't"
                + " state it, and faces are not recognised.");
  }

  @Test
  void theFourViewsOfARowFromTheFrontAreJudged() {
    ViewCatalogue views = ViewCatalogue.standard();
    assertThat(views.all().stream().filter(view -> Subject.of(view) == Subject.LEVEL_ROW))
        .extracting(View::key)
        .containsExactlyInAnyOrderElementsOf(Subject.LEVEL_ROWS);
    assertThat(Subject.of(views.byKey("face-smile").orElseThrow())).isEqualTo(Subject.FACE);
    assertThat(Subject.of(views.byKey("upper-occlusal").orElseThrow())).isEqualTo(Subject.MOUTH);
  }

  private static MouthPicture mouth() {
    return new MouthPicture(1);
  }

  private static ToothRow row(MouthPicture mouth) {
    LookedAt photo = mouth.lookedAt();
    return Measured.of(photo.preview(), photo.picture(), photo.frame()).row();
  }

  private static QualityAdvice advice(MouthPicture mouth, Subject subject) {
    LookedAt photo = mouth.lookedAt();
    return QualityAdvice.of(
        new LookedAt(photo.facts(), photo.frame(), photo.preview(), photo.picture(), subject),
        List.of(),
        QualityThresholds.USUAL);
  }

  private static Optional<QualityFinding> tilt(MouthPicture mouth) {
    return advice(mouth, Subject.LEVEL_ROW).finding(QualityKind.TILT);
  }

  private static String reason(QualityAdvice advice) {
    return advice.unmeasured().stream()
        .filter(missing -> missing.kind() == QualityKind.TILT)
        .map(Unmeasured::reason)
        .findFirst()
        .orElseThrow();
  }
}
