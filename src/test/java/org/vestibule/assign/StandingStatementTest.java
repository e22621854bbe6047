package org.vestibule.assign;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.assign.WaitReason.Kind;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.LowerArchShown;
import org.vestibule.dental.Notation;
import org.vestibule.dental.TeethReader;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.intake.CaptureFactsBuilder;

/** A person's standing statement on a view and camera, and what it must not speak of. */
class StandingStatementTest {

  private static final String VISIT =
      "visit,patient id,name,start,end\nV1,7,\"Ash, Ida\",2026-03-11 09:00,09:45\n";
  private static final CaptureDeclaration IN_FRONT =
      declared("upper-occlusal", "as shot", "bottom", "Bo Quillfeather");

  /**
   * Exif Orientation is unreliable while the phone points up or down (CIPA DC-008 from memory;
   * common practice, no source), but phone and operator stand as ever: the raw picture is the same,
   * so the turn must be. Operator in front: raw upper occlusal is L\A, and one vertical flip gives
   * L\P.
   */
  @ParameterizedTest
  @ValueSource(ints = {1, 3, 6, 8})
  void isNotMovedByTheRotationThatThePhoneNotes(int exif) {
    Assignment.Decided decided =
        decided(
            assign(row("upper occlusal", "", ""), camera().orientation(exif).build(), IN_FRONT));
    assertThat(decided.laid().turn()).isEqualTo(Turn.FLIP_VERTICAL);
    assertThat(decided.laid().shown().text()).isEqualTo("L\\P");
    assertThat(decided.decision().incisors()).isEqualTo(Incisors.BOTTOM);
    assertThat(decided.decision().facts())
        .contains(
            "the mirror by the standing statement of Bo Quillfeather",
            "the incisors by the standing statement of Bo Quillfeather");
  }

  @Test
  void givesWayToWhatWasSaidOfThePictureItself() {
    CaptureFacts turned = camera().orientation(6).build();
    Assignment.Decided decided =
        decided(assign(row("upper occlusal", "as shot", "top"), turned, IN_FRONT));
    // Exif 6 shows the first stored column at the top: the sheet's top is the raw left edge.
    assertThat(decided.decision().incisors()).isEqualTo(Incisors.LEFT);
  }

  @Test
  void isProposedAsTheSheetShowsThePicture() {
    Assignment waits =
        assign(
            PersonWords.by("Ann").with(PhotoFact.VIEW, "upper occlusal"),
            camera().orientation(6).build(),
            IN_FRONT);
    // Exif 6 shows the last stored row at the left.
    assertThat(((Assignment.Waits) waits).proposal().get(PhotoFact.INCISORS)).isEqualTo("left");
  }

  @ParameterizedTest
  @CsvSource({"none", "as shot", "corrected"})
  void doesNotSpeakOfEditedOrFrontCameraPictures(String mirror) {
    CaptureDeclaration always = declared("upper-occlusal", mirror, "bottom", "Bo Quillfeather");
    CaptureFacts edited = camera().editingTraces(List.of("flipped")).build();
    CaptureFacts front = camera().frontLens(true).build();
    assertThat(sentences(assign(row("upper occlusal", "", ""), edited, always)))
        .contains(
            "a standing statement speaks of pictures as the rear camera stores them, but this one"
                + " was edited");
    assertThat(sentences(assign(row("upper occlusal", "", ""), front, always)))
        .contains(
            "a standing statement speaks of pictures as the rear camera stores them, but this one"
                + " was taken with a front-facing lens");
  }

  @Test
  void addsNoIncisorsToAnEditedPictureWhoseMirrorWasSeen() {
    CaptureFacts edited = camera().editingTraces(List.of("rotated")).build();
    assertThat(assign(row("upper occlusal", "as shot seen", ""), edited, IN_FRONT))
        .isInstanceOf(Assignment.Waits.class);
    assertThat(assign(row("upper occlusal", "as shot seen", "bottom"), edited, IN_FRONT))
        .isInstanceOf(Assignment.Decided.class);
  }

  @Test
  void twoThatDisagreeAreAContradiction() {
    CaptureDeclaration other = declared("upper-occlusal", "as shot", "top", "Ann Tinderbell");
    Assignment assignment =
        assign(row("upper occlusal", "", ""), camera().build(), IN_FRONT, other);
    assertThat(sentences(assignment))
        .containsExactly("two standing statements for this view and camera disagree");
    CaptureDeclaration same = declared("upper-occlusal", "as shot", "bottom", "Ann Tinderbell");
    assertThat(assign(row("upper occlusal", "", ""), camera().build(), IN_FRONT, same))
        .isInstanceOf(Assignment.Decided.class);
  }

  @Test
  void needsANameAndWordsThatAreUnderstood() {
    assertThat(CaptureDeclaration.of("frontal", "P1", "none", "", " "))
        .isEqualTo(Outcome.refused("a standing statement names nobody", "say who states it"));
    assertThat(CaptureDeclaration.of("frontal", "P1", "usual", "", "Bo"))
        .isInstanceOf(Outcome.Refused.class);
    assertThat(CaptureDeclaration.of("frontal", "P1", "none", "middle", "Bo"))
        .isInstanceOf(Outcome.Refused.class);
  }

  /** A wrong word for the mirror turns right into left, so an unusual one needs eyes on it. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          palatal right  | none    |        | the view Palatal, right side is taken in a mirror, but the mirror is stated as none
          upper occlusal | none    |        | the view Upper occlusal is taken in a mirror, but the mirror is stated as none
          upper anterior | as shot |        | the view Upper front teeth with contraster is taken without a mirror, but one is stated
          right buccal   | none    | mirror | a mirror is among the accessories, but the mirror is stated as none
          """)
  void anUnusualMirrorWaitsUntilSomebodyLooked(
      String view, String mirror, String accessory, String sentence) {
    Assignment waits =
        assign(row(view, mirror, "bottom", accessory), camera().orientation(1).build());
    assertThat(sentences(waits)).contains(sentence);
    assertThat(((Assignment.Waits) waits).reasons())
        .extracting(WaitReason::kind)
        .contains(Kind.CONTRADICTION);
    assertThat(
            sentences(assign(row(view, mirror + " seen", "bottom", accessory), camera().build())))
        .doesNotContain(sentence);
  }

  @ParameterizedTest
  @CsvSource({"right buccal, none", "right buccal, as shot", "frontal, none", "frontal, corrected"})
  void anOrdinaryMirrorDecides(String view, String mirror) {
    assertThat(assign(row(view, mirror, ""), camera().build()))
        .isInstanceOf(Assignment.Decided.class);
  }

  @ParameterizedTest
  @CsvSource({
    "1, TOP, TOP", "2, RIGHT, LEFT", "3, TOP, BOTTOM", "4, TOP, BOTTOM",
    "5, TOP, LEFT", "6, TOP, RIGHT", "7, TOP, RIGHT", "8, TOP, LEFT"
  })
  void theRawEdgeIsFoundOnTheSheet(int exif, Incisors raw, Incisors sheet) {
    assertThat(CaptureWords.onSheet(raw, exif)).isEqualToIgnoringCase(sheet.name());
    assertThat(sheet.inRaw(Turn.asShown(exif))).isEqualTo(raw);
  }

  private static CaptureDeclaration declared(
      String view, String mirror, String incisors, String by) {
    return CaptureDeclaration.of(view, "P1", mirror, incisors, by).orThrow();
  }

  private static CaptureFactsBuilder camera() {
    return CaptureFacts.builder()
        .takenAt(LocalDateTime.of(2026, 3, 11, 9, 10))
        .model("P1")
        .orientation(1);
  }

  private static PersonWords row(String view, String mirror, String incisors) {
    return row(view, mirror, incisors, "");
  }

  private static PersonWords row(String view, String mirror, String incisors, String accessory) {
    return PersonWords.by("Ann")
        .with(PhotoFact.VISIT, "V1")
        .with(PhotoFact.VIEW, view)
        .with(PhotoFact.MIRROR, mirror)
        .with(PhotoFact.INCISORS, incisors)
        .with(PhotoFact.ACCESSORIES, accessory);
  }

  private static Assignment assign(
      PersonWords words, CaptureFacts facts, CaptureDeclaration... declarations) {
    AssignSources sources =
        new AssignSources(
            VisitList.parse(VISIT.getBytes(StandardCharsets.UTF_8), "visits", "").orThrow(),
            null,
            List.of(),
            false,
            List.of(declarations),
            ViewCatalogue.standard(),
            new TeethReader(Notation.ISO_3950),
            LowerArchShown.INCISORS_DOWN,
            ZoneId.of("Europe/Vienna"),
            "Nightly");
    return new PhotoAssigner(sources, facts).assign(words, NameFacts.NONE, List.of());
  }

  private static Assignment.Decided decided(Assignment assignment) {
    assertThat(assignment).isInstanceOf(Assignment.Decided.class);
    return (Assignment.Decided) assignment;
  }

  private static List<String> sentences(Assignment assignment) {
    return assignment instanceof Assignment.Waits waits
        ? waits.reasons().stream().map(WaitReason::sentence).toList()
        : List.of();
  }
}
