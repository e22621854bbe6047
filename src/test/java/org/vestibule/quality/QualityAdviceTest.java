package org.vestibule.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.jpeg.FrameSize;
import org.vestibule.jpeg.PreviewReading;
import org.vestibule.jpeg.Raster;

/** Advice on pictures with known faults, drawn here or of the sample roll. */
class QualityAdviceTest {

  private static final QualityThresholds USUAL = QualityThresholds.USUAL;

  @Test
  void faultlessPictureHasNoFindingsAndSaysWhatWasNotMeasured() {
    QualityAdvice advice = advice(new MouthPicture(1).lookedAt());
    assertThat(advice.findings()).isEmpty();
    assertThat(advice.unmeasured())
        .extracting(Unmeasured::kind)
        .containsExactly(QualityKind.DIGITAL_ZOOM, QualityKind.BLUR, QualityKind.COLOUR_CAST);
    assertThat(advice.measured(QualityKind.GLARE)).isTrue();
  }

  // Digital zoom

  @Test
  void zoomAboveTwoIsSaid() {
    QualityFinding zoom = finding(zoomed(2.5), QualityKind.DIGITAL_ZOOM);
    assertThat(zoom.measured()).isEqualTo(2.5);
    assertThat(zoom.threshold()).isEqualTo(2);
    assertThat(zoom.sentence())
        .isEqualTo(
            "It was taken with 2.5x digital zoom, more than 2.0x: of the frame's pixels only about"
                + " 2.0 million were seen by the lens, the rest is computed.");
    assertThat(zoom.whatToDo())
        .isEqualTo("Go nearer, or use the phone's longer lens, and crop afterwards.");
  }

  @Test
  void zoomOfTwoOrNoneIsNotSaid() {
    assertThat(advice(zoomed(2.0)).finding(QualityKind.DIGITAL_ZOOM)).isEmpty();
    assertThat(advice(zoomed(1.0)).measured(QualityKind.DIGITAL_ZOOM)).isTrue();
    assertThat(reason(advice(zoomed(null)), QualityKind.DIGITAL_ZOOM))
        .isEqualTo("The file doesn't state a digital zoom.");
  }

  // Burnt-out teeth

  /** Squares in one tooth, in samples; eight teeth have 8 x 80 x 144. */
  @ParameterizedTest
  @CsvSource({"24, false", "36, true", "60, true", "74, true"})
  void burntOutToothIsMeasured(int side, boolean said) {
    LookedAt photo = new MouthPicture(1).rectangle(83, 270, side, side, Color.WHITE).lookedAt();
    Optional<QualityFinding> burnt = advice(photo).finding(QualityKind.BURNT_OUT_TEETH);
    assertThat(burnt.isPresent()).isEqualTo(said);
    double share = side * side / (8.0 * 80 * 144);
    burnt.ifPresent(found -> assertThat(found.measured()).isCloseTo(share, within(0.004)));
  }

  @Test
  void toothBurntOutFromEdgeToEdgeIsSaid() {
    LookedAt photo = new MouthPicture(1).rectangle(80, 250, 80, 144, Color.WHITE).lookedAt();
    QualityFinding burnt = finding(photo, QualityKind.BURNT_OUT_TEETH);
    assertThat(burnt.measured()).isCloseTo(1 / 8.0, within(0.01));
    assertThat(burnt.sentence())
        .matches(
            "1[123]\\.\\d % of what is tooth-coloured is burnt out to white, more than 1\\.0 %:"
                + " surface and shade can't be judged there\\.");
    assertThat(burnt.whatToDo())
        .isEqualTo(
            "Take it again with less flash or from further away, or touch the brightest tooth on"
                + " the screen so that the phone exposes for it.");
  }

  @Test
  void oneChannelAtItsEndIsBurntOutToo() {
    Color warm = new Color(253, 238, 205);
    LookedAt photo = new MouthPicture(1).rectangle(90, 260, 60, 120, warm).lookedAt();
    assertThat(advice(photo).finding(QualityKind.BURNT_OUT_TEETH)).isPresent();
    Color below = new Color(246, 232, 200);
    photo = new MouthPicture(1).rectangle(90, 260, 60, 120, below).lookedAt();
    assertThat(advice(photo).finding(QualityKind.BURNT_OUT_TEETH)).isEmpty();
  }

  /** Together more than 1 % of the teeth, each a spot. */
  @Test
  void smallSpecularSpotsAreNoBurntOutTeeth() {
    MouthPicture mouth = new MouthPicture(1);
    for (int i = 0; i < 8; i++) {
      mouth.rectangle(105 + i * 90, 280, 14, 14, Color.WHITE);
      mouth.rectangle(105 + i * 90, 340, 14, 14, Color.WHITE);
    }
    assertThat(16 * 14 * 14 / (8.0 * 80 * 144)).isGreaterThan(0.03);
    assertThat(advice(mouth.lookedAt()).finding(QualityKind.BURNT_OUT_TEETH)).isEmpty();
  }

  @Test
  void faceAndUnknownViewAreNotMeasured() {
    LookedAt photo = new MouthPicture(1).rectangle(90, 260, 60, 120, Color.WHITE).lookedAt();
    QualityAdvice face = advice(of(photo, Subject.FACE));
    assertThat(face.findings()).isEmpty();
    assertThat(reason(face, QualityKind.BURNT_OUT_TEETH))
        .isEqualTo("A face shows too little of the teeth.");
    assertThat(reason(advice(of(photo, Subject.UNKNOWN)), QualityKind.GLARE))
        .isEqualTo("The view is not known, so that it isn't known what is a tooth.");
  }

  @Test
  void pictureWithoutTeethIsNotMeasured() {
    LookedAt photo =
        new MouthPicture(1).rectangle(0, 0, 880, 660, new Color(60, 30, 30)).lookedAt();
    assertThat(reason(advice(photo), QualityKind.BURNT_OUT_TEETH))
        .isEqualTo("Less than 1 % of the picture is as bright and as pale as teeth are.");
  }

  // Glare

  @Test
  void reflectionsOnGumsAreGlare() {
    MouthPicture mouth = new MouthPicture(1);
    for (int i = 0; i < 8; i++) {
      mouth.rectangle(100 + i * 90, 450, 32, 32, Color.WHITE);
    }
    QualityFinding glare = finding(mouth.lookedAt(), QualityKind.GLARE);
    assertThat(glare.measured()).isCloseTo(8 * 32 * 32 / (880.0 * 660), within(0.003));
    assertThat(glare.sentence())
        .matches("Reflections cover 1\\.\\d % of the picture, more than 1\\.0 %\\.");
    assertThat(glare.whatToDo())
        .isEqualTo("Dry the field, and light it from the side rather than from the lens.");
    assertThat(advice(mouth.lookedAt()).finding(QualityKind.BURNT_OUT_TEETH)).isEmpty();
  }

  @Test
  void whiteBackgroundAtTheEdgeIsNoGlare() {
    LookedAt photo = new MouthPicture(1).rectangle(0, 0, 880, 80, Color.WHITE).lookedAt();
    assertThat(advice(photo).finding(QualityKind.GLARE)).isEmpty();
    assertThat(advice(photo).finding(QualityKind.BURNT_OUT_TEETH)).isEmpty();
  }

  // Blur

  @ParameterizedTest
  @CsvSource({"5, true", "9, true", "25, true", "1, false"})
  void blurIsSaidWithinItsSeries(int side, boolean said) {
    List<Sharpness> series =
        List.of(new MouthPicture(2).sharpness(), new MouthPicture(3).sharpness());
    QualityAdvice advice =
        QualityAdvice.of(new MouthPicture(1).blurred(side).lookedAt(), series, USUAL);
    assertThat(advice.finding(QualityKind.BLUR).isPresent()).isEqualTo(said);
    assertThat(QualityAdvice.blur(advice.sharpness(), series, USUAL))
        .isEqualTo(advice.finding(QualityKind.BLUR));
  }

  @Test
  void blurIsSaidInWords() {
    QualityFinding blur =
        QualityAdvice.blur(
                new Sharpness(20, 5, 440, 4032),
                List.of(new Sharpness(90, 5, 440, 4032), new Sharpness(110, 5, 440, 4032)),
                USUAL)
            .orElseThrow();
    assertThat(blur.measured()).isEqualTo(0.2);
    assertThat(blur.sentence())
        .isEqualTo(
            "It has 20 % of the fine detail that is usual in its series, less than 35 %: perhaps"
                + " it is out of focus or moved.");
    assertThat(blur.whatToDo())
        .isEqualTo("Look at it in full size; take it again if the patient is still there.");
  }

  @Test
  void twoOthersOfTheSameSizeAreNeeded() {
    Sharpness other = new MouthPicture(2).sharpness();
    Sharpness smaller = new Sharpness(other.variance(), other.fine(), 440, 3000);
    LookedAt soft = new MouthPicture(1).blurred(25).lookedAt();
    QualityAdvice advice = QualityAdvice.of(soft, List.of(other, smaller), USUAL);
    assertThat(advice.finding(QualityKind.BLUR)).isEmpty();
    assertThat(reason(advice, QualityKind.BLUR))
        .isEqualTo(
            "Sharpness can only be compared: 2 other photographs of this kind and size in the visit"
                + " are needed, there are 1.");
  }

  @ParameterizedTest
  @CsvSource({
    "frontal, arches",
    "right-buccal, arches",
    "upper-occlusal, occlusal",
    "face-rest, face",
    "upper-anterior, upper-anterior",
    "upper-tooth-occlusal, upper-tooth-occlusal"
  })
  void seriesAreOfViewsThatShowAsMuch(String view, String kind) {
    assertThat(QualityAdvice.seriesKind(ViewCatalogue.standard().byKey(view).orElseThrow()))
        .isEqualTo(kind);
  }

  // Colour cast

  @Test
  void greyCardOf18PercentHasNoCast() {
    CardColour colour = colour(card(new Color(118, 118, 118))).orThrow();
    assertThat(colour.finding()).isEmpty();
    assertThat(colour.difference()).isLessThan(0.5);
  }

  /** Expected: the difference between the two colours, by the formula that ColourTest checks. */
  @Test
  void yellowCardIsSaid() {
    QualityFinding cast = colour(card(new Color(124, 118, 100))).orThrow().finding().orElseThrow();
    Lab seen = Lab.ofSrgb(124 << 16 | 118 << 8 | 100);
    double expected = ColourDifference.between(seen, new Lab(seen.lightness(), 0, 0));
    assertThat(cast.measured()).isCloseTo(expected, within(0.5));
    assertThat(cast.sentence())
        .matches(
            "The grey card looks yellow: \\d\\.\\d \\(CIEDE2000\\) from grey, more than 1\\.8\\.");
    assertThat(cast.whatToDo())
        .isEqualTo(
            "Compare no shades by this photograph; set the phone's white balance by the card.");
  }

  @ParameterizedTest
  @CsvSource({"118, 110, 118, red and blue", "112, 124, 118, green", "104, 112, 124, blue"})
  void directionOfTheCastIsSaid(int red, int green, int blue, String direction) {
    QualityFinding cast =
        colour(card(new Color(red, green, blue))).orThrow().finding().orElseThrow();
    assertThat(cast.sentence()).startsWith("The grey card looks " + direction + ":");
  }

  @Test
  void withoutCardOrWithABadOneColourIsNotMeasured() {
    assertThat(reason(advice(new MouthPicture(1).lookedAt()), QualityKind.COLOUR_CAST))
        .isEqualTo("Colour can only be judged against a grey card, and nobody marked one.");
    assertThat(colour(card(new Color(252, 250, 240))))
        .isEqualTo(
            Outcome.refused(
                "the grey card is too dark or too bright there to be judged",
                "mark another spot of it, or photograph it again in the light of the teeth"));
    assertThat(
            QualityAdvice.colour(
                new MouthPicture(1).lookedAt().preview(), new GreyCard(0, 0.2, 0.5, 0.5), USUAL))
        .isEqualTo(
            Outcome.refused(
                "what is marked is not an even grey card",
                "mark the card alone, away from its edges and from reflections"));
  }

  @Test
  void aSpotAtTheEdgeIsMovedInwards() {
    for (double x : new double[] {0, 0.5, 1}) {
      for (double y : new double[] {0, 0.5, 1}) {
        GreyCard spot = GreyCard.spot(x, y);
        assertThat(spot.right() - spot.left()).isCloseTo(0.03, within(1e-9));
        assertThat(spot.bottom() - spot.top()).isCloseTo(0.03, within(1e-9));
        assertThat((spot.left() + spot.right()) / 2).isCloseTo(x, within(0.0151));
      }
    }
  }

  @Test
  void cardOutsideThePictureIsRefused() {
    assertThatThrownBy(() -> new GreyCard(0.5, 0, 0.4, 1))
        .hasMessage(
            "a grey card lies within 0 to 1, left before right and top before bottom, but was 0.5,"
                + " 0.0, 0.4, 1.0");
  }

  // Pixels, tilt, thresholds

  @Test
  void fewerThanFiveMillionPixelsAreSaid() {
    LookedAt photo = with(new MouthPicture(1).lookedAt(), new FrameSize(1600, 1200));
    QualityFinding few = finding(photo, QualityKind.FEW_PIXELS);
    assertThat(few.measured()).isEqualTo(1.92);
    assertThat(few.sentence())
        .isEqualTo("The frame has 1.9 million pixels, fewer than 5.0 million.");
    assertThat(few.whatToDo())
        .isEqualTo(
            "If it came through a messenger, send the original file; otherwise set the phone to its"
                + " full size.");
    LookedAt enough = with(new MouthPicture(1).lookedAt(), new FrameSize(2500, 2000));
    assertThat(advice(enough).finding(QualityKind.FEW_PIXELS)).isEmpty();
  }

  @Test
  void thresholdsAreThePractices() {
    QualityThresholds strict = new QualityThresholds(1, 0, 0, 1, 1, 0, 50, 0);
    QualityAdvice advice =
        QualityAdvice.of(zoomed(1.5), List.of(new MouthPicture(2).sharpness()), strict);
    assertThat(advice.findings())
        .extracting(QualityFinding::kind)
        .contains(QualityKind.DIGITAL_ZOOM, QualityKind.FEW_PIXELS);
    assertThatThrownBy(() -> new QualityThresholds(2, 1.1, 0, 1, 1, 0, 5, 3))
        .hasMessage("burntOutShare must be 0 to 1 but was 1.1");
    assertThatThrownBy(() -> new QualityThresholds(0.5, 0, 0, 1, 1, 0, 5, 3))
        .hasMessage("zoomRatio must be 1 or more but was 0.5");
  }

  // The sample roll

  @Test
  void blownAndBlurredSamplesAreFoundOut() throws IOException {
    FrameSize size = new FrameSize(1280, 960);
    LookedAt blown = sample("20260312_104455.jpg", size);
    assertThat(finding(blown, QualityKind.BURNT_OUT_TEETH).measured()).isGreaterThan(0.3);
    LookedAt blurred = sample("20260312_104502.jpg", size);
    List<Sharpness> series =
        List.of(sharpness(blown), sharpness(sample("20260312_104630.jpg", size)));
    QualityAdvice advice = QualityAdvice.of(blurred, series, USUAL);
    assertThat(advice.finding(QualityKind.BLUR)).isPresent();
    assertThat(QualityAdvice.blur(sharpness(blown), List.of(series.get(1), series.get(1)), USUAL))
        .isEmpty();
  }

  private static LookedAt sample(String name, FrameSize size) throws IOException {
    byte[] bytes = Files.readAllBytes(Path.of("samples", "roll", name));
    PreviewReading reading =
        PreviewReading.of(bytes, QualityAdvice.PREVIEW_SIDE, Turn.NONE).orThrow();
    return new LookedAt(CaptureFacts.NONE, size, reading.preview(), reading.facts(), Subject.MOUTH);
  }

  private static Sharpness sharpness(LookedAt photo) {
    return Sharpness.of(photo.preview(), photo.picture(), photo.frame());
  }

  private static QualityAdvice advice(LookedAt photo) {
    return QualityAdvice.of(photo, List.of(), USUAL);
  }

  private static QualityFinding finding(LookedAt photo, QualityKind kind) {
    return advice(photo).finding(kind).orElseThrow();
  }

  private static String reason(QualityAdvice advice, QualityKind kind) {
    return advice.unmeasured().stream()
        .filter(missing -> missing.kind() == kind)
        .map(Unmeasured::reason)
        .findFirst()
        .orElseThrow();
  }

  private static LookedAt zoomed(@Nullable Double ratio) {
    LookedAt photo = new MouthPicture(1).lookedAt();
    CaptureFacts facts = CaptureFacts.builder().digitalZoomRatio(ratio).build();
    return new LookedAt(facts, photo.frame(), photo.preview(), photo.picture(), photo.subject());
  }

  private static Raster card(Color colour) {
    return new MouthPicture(1).rectangle(440, 440, 200, 160, colour).lookedAt().preview();
  }

  private static Outcome<CardColour> colour(Raster preview) {
    return QualityAdvice.colour(preview, GreyCard.spot(0.62, 0.78), USUAL);
  }

  private static LookedAt of(LookedAt photo, Subject subject) {
    return new LookedAt(photo.facts(), photo.frame(), photo.preview(), photo.picture(), subject);
  }

  private static LookedAt with(LookedAt photo, FrameSize frame) {
    return new LookedAt(photo.facts(), frame, photo.preview(), photo.picture(), photo.subject());
  }
}
