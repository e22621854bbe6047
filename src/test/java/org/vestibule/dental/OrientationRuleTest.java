package org.vestibule.dental;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;

/**
 * The one turn that shows a picture rightly, proved against {@link VectorOracle}: real captures are
 * made from geometry, and what the rule says is laid over them.
 */
class OrientationRuleTest {

  private static final List<View> VIEWS = ViewCatalogue.standard().all();

  /**
   * Every view, direct or in a mirror, the phone held any of four ways: told the truth about the
   * capture, the rule must show it as the view demands, and true-handed.
   */
  @Test
  void everyCaptureToldTrulyIsShownAsItsViewDemands() {
    int shown = 0;
    for (View view : VIEWS) {
      char looking = view.looking().letter();
      for (LowerArchShown setting : LowerArchShown.values()) {
        for (Mirror mirror : List.of(Mirror.NONE, Mirror.AS_SHOT, Mirror.CORRECTED)) {
          boolean mirrorImage = mirror == Mirror.AS_SHOT;
          for (VectorOracle.Raw raw : VectorOracle.rawPictures(looking, mirrorImage)) {
            Capture capture = truth(view, mirror, raw).seenByPerson();
            Laid laid = OrientationRule.lay(view, setting, capture).orThrow();
            VectorOracle.Raw seen = VectorOracle.turned(raw, laid.turn());
            String where = view.key() + " " + setting + " " + mirror + " " + raw;
            assertThat(seen.right() + "\\" + seen.down()).as(where).isEqualTo(laid.shown().text());
            assertThat(laid.shown()).as(where).isEqualTo(view.shownAs(setting));
            assertThat(VectorOracle.cross(seen.right(), seen.down())).as(where).isEqualTo(looking);
            shown++;
          }
        }
      }
    }
    assertThat(shown).isEqualTo(VIEWS.size() * 2 * 3 * 4);
  }

  private static Capture truth(View view, Mirror mirror, VectorOracle.Raw raw) {
    if (view.occlusal()) {
      Incisors incisors =
          Arrays.stream(Incisors.values())
              .filter(edge -> raw.at(edge.name()) == 'A')
              .findFirst()
              .orElseThrow();
      return new Capture(mirror, incisors, null, false, false);
    }
    Integer exif =
        List.of(1, 3, 6, 8).stream()
            .filter(value -> opposite(VectorOracle.turned(raw, Turn.ofExif(value)).down()) == 'H')
            .findFirst()
            .orElseThrow();
    return new Capture(mirror, null, exif, false, false);
  }

  private static char opposite(char letter) {
    return VectorOracle.opposite(letter);
  }

  /**
   * Every view with every combination of mirror, stated incisors, Exif value and stated top: the
   * rule answers exactly when one real capture fits all that was said, and then shows that one
   * rightly.
   */
  @Test
  void theRuleAnswersExactlyWhenOneCaptureFitsWhatIsSaid() {
    for (View view : VIEWS) {
      for (LowerArchShown setting : LowerArchShown.values()) {
        for (Capture capture : everythingOneCanSay()) {
          Outcome<Laid> outcome = OrientationRule.lay(view, setting, capture);
          List<VectorOracle.Raw> fitting = fitting(view, capture);
          if (fitting.size() != 1) {
            assertThat(outcome)
                .as("%s %s", view.key(), capture)
                .isInstanceOf(Outcome.Refused.class);
            continue;
          }
          assertThat(outcome).as("%s %s", view.key(), capture).isInstanceOf(Outcome.Done.class);
          Laid laid = outcome.orThrow();
          VectorOracle.Raw seen = VectorOracle.turned(fitting.get(0), laid.turn());
          assertThat(seen.right() + "\\" + seen.down())
              .as("%s %s", view.key(), capture)
              .isEqualTo(view.shownAs(setting).text());
        }
      }
    }
  }

  private static List<Capture> everythingOneCanSay() {
    List<Capture> all = new ArrayList<>();
    for (Mirror mirror : Mirror.values()) {
      for (Incisors incisors : withNone(Incisors.values())) {
        for (Integer exif : withNone(new Integer[] {1, 2, 3, 4, 5, 6, 7, 8})) {
          for (Edge up : withNone(Edge.values())) {
            all.add(new Capture(mirror, incisors, exif, false, false, up, true));
            all.add(new Capture(mirror, incisors, exif, false, false, up, false));
          }
        }
      }
    }
    return all;
  }

  private static <T> List<T> withNone(T[] values) {
    List<T> all = new ArrayList<>(Arrays.asList(values));
    all.add(null);
    return all;
  }

  /** The real captures that fit what was said; none where handedness can't be known. */
  private static List<VectorOracle.Raw> fitting(View view, Capture said) {
    Integer exif = said.exifOrientation();
    boolean reflects = exif != null && List.of(2, 4, 5, 7).contains(exif);
    boolean oddFace = view.showsFace() && said.mirror() != Mirror.NONE;
    boolean unknown = said.mirror() == Mirror.UNKNOWN || (!said.seen() && (reflects || oddFace));
    if (unknown || (view.occlusal() && (said.incisors() == null || said.up() != null))) {
      return List.of();
    }
    boolean mirrorImage = (said.mirror() == Mirror.AS_SHOT) != reflects;
    boolean showsFront = view.shownAs().text().matches(".*[AP].*");
    return VectorOracle.rawPictures(view.looking().letter(), mirrorImage).stream()
        .filter(
            raw -> said.incisors() == null || !showsFront || raw.at(said.incisors().name()) == 'A')
        .filter(raw -> said.up() == null || raw.at(said.up().name()) == 'H')
        .filter(
            raw ->
                view.occlusal()
                    || said.up() != null
                    || exif == null
                    || opposite(VectorOracle.turned(raw, Turn.ofExif(exif)).down()) == 'H')
        .toList();
  }

  /** The phone points up or down: whatever its Exif rotation says, it must change nothing. */
  @Test
  void exifThatIsOffByQuarterTurnsNeverChangesAnOcclusalPicture() {
    for (View view : VIEWS) {
      if (!view.occlusal()) {
        continue;
      }
      for (Incisors incisors : Incisors.values()) {
        for (Mirror mirror : List.of(Mirror.NONE, Mirror.AS_SHOT, Mirror.CORRECTED)) {
          Laid without =
              OrientationRule.lay(
                      view,
                      LowerArchShown.INCISORS_DOWN,
                      new Capture(mirror, incisors, null, false, false))
                  .orThrow();
          for (int exif : new int[] {1, 3, 6, 8}) {
            assertThat(
                    OrientationRule.lay(
                        view,
                        LowerArchShown.INCISORS_DOWN,
                        new Capture(mirror, incisors, exif, false, false)))
                .as("%s %s %s Exif %d", view.key(), mirror, incisors, exif)
                .isEqualTo(Outcome.done(without));
          }
        }
      }
    }
  }

  /**
   * Mirror geometry worked out by hand: where the operator stands, what the raw picture's right and
   * bottom are, and the one flip that mends it.
   */
  @ParameterizedTest
  @CsvSource({
    // operator in front: raw upper L\A, raw lower L\P
    "upper-occlusal, INCISORS_DOWN, BOTTOM, FLIP_VERTICAL",
    "lower-occlusal, INCISORS_DOWN, TOP, FLIP_VERTICAL",
    // operator behind the head: raw upper R\P, raw lower R\A
    "upper-occlusal, INCISORS_DOWN, TOP, FLIP_HORIZONTAL",
    "lower-occlusal, INCISORS_DOWN, BOTTOM, FLIP_HORIZONTAL",
    // the other layout of the lower arch
    "lower-occlusal, INCISORS_UP, TOP, FLIP_HORIZONTAL",
    "lower-occlusal, INCISORS_UP, BOTTOM, FLIP_VERTICAL",
    "upper-occlusal, INCISORS_UP, BOTTOM, FLIP_VERTICAL",
  })
  void oneFlipMendsAnOcclusalMirrorShot(
      String view, LowerArchShown setting, Incisors incisors, Turn turn) {
    Capture capture = new Capture(Mirror.AS_SHOT, incisors, 6, false, false);
    assertThat(OrientationRule.lay(view(view), setting, capture).orThrow().turn()).isEqualTo(turn);
  }

  @ParameterizedTest
  @CsvSource({
    "right-buccal, 1, FLIP_HORIZONTAL", "left-buccal, 1, FLIP_HORIZONTAL",
    "palatal-front, 1, FLIP_HORIZONTAL", "right-buccal, 3, FLIP_VERTICAL"
  })
  void oneFlipMendsALevelMirrorShot(String view, int exif, Turn turn) {
    Capture capture = new Capture(Mirror.AS_SHOT, null, exif, false, false);
    assertThat(lay(view, capture).orThrow().turn()).isEqualTo(turn);
  }

  /** PS3.16 CID 4065, edition 2026b: 787610003 Mirrored photo image intraoral corrected. */
  @Test
  void aCorrectedMirrorImageSaysSoInItsViewModifier() {
    Code corrected = new Code("SCT", "787610003", "Mirrored photo image intraoral corrected");
    for (Mirror mirror : List.of(Mirror.AS_SHOT, Mirror.CORRECTED)) {
      Capture capture = new Capture(mirror, Incisors.TOP, null, false, false);
      assertThat(lay("upper-occlusal", capture).orThrow().viewModifiers())
          .containsExactly(corrected);
      Capture level = new Capture(mirror, null, 1, false, false);
      assertThat(lay("palatal-right", level).orThrow().viewModifiers()).containsExactly(corrected);
    }
    Capture direct = new Capture(Mirror.NONE, null, 1, false, false);
    assertThat(lay("right-buccal", direct).orThrow().viewModifiers()).isEmpty();
    assertThat(lay("upper-anterior", direct).orThrow().viewModifiers())
        .containsExactly(new Code("SCT", "789313002", "Photo image of anterior teeth"));
    Capture mirroredSelfie = new Capture(Mirror.AS_SHOT, null, 1, true, false).seenByPerson();
    assertThat(lay("face-smile", mirroredSelfie).orThrow().viewModifiers())
        .as("CID 4065 speaks of intraoral pictures")
        .containsExactly(new Code("99VESTIBULE", "mirror-corrected", "Mirror image, corrected"));
  }

  @Test
  void theFactsAreTold() {
    Capture capture = new Capture(Mirror.AS_SHOT, Incisors.LEFT, 6, false, false);
    assertThat(
            lay("right-buccal", new Capture(Mirror.NONE, null, 6, false, false))
                .orThrow()
                .because())
        .containsExactly(
            "stated: taken without a mirror",
            "Exif Orientation 6: the raw picture's left edge is up",
            "the view Right buccal is shown as A\\F");
    assertThat(lay("upper-occlusal", capture).orThrow().because())
        .containsExactly(
            "stated: taken in a mirror, the file still holds the mirror image",
            "stated: incisors at the raw picture's left edge",
            "the view Upper occlusal is shown as L\\P");
  }

  @Test
  void whatCannotBeKnownIsRefused() {
    assertThat(
            refusal("upper-occlusal", new Capture(Mirror.UNKNOWN, Incisors.TOP, 1, false, false)))
        .isEqualTo(
            "nobody said whether this picture was taken in a mirror, so right and left are not"
                + " known: state the mirror: none, as shot, or already corrected");
    assertThat(refusal("upper-occlusal", new Capture(Mirror.AS_SHOT, null, 1, false, false)))
        .isEqualTo(
            "nobody said where the incisors lie in this Upper occlusal; the phone points up or down"
                + " here, where Exif rotation can't be trusted: state the edge of the raw picture at"
                + " which the incisors lie: top, bottom, left or right");
    assertThat(
            refusal(
                "upper-occlusal",
                new Capture(Mirror.AS_SHOT, Incisors.TOP, 1, false, false).withUp(Edge.TOP)))
        .isEqualTo(
            "a top edge is stated for this Upper occlusal, which has no up in the patient: state where"
                + " the incisors lie instead");
    assertThat(refusal("frontal", new Capture(Mirror.NONE, null, null, false, false)))
        .isEqualTo(
            "the file has no Exif Orientation that says which way is up in this Frontal, teeth"
                + " together: state on the preview which edge of the raw picture is the top");
    assertThat(refusal("frontal", new Capture(Mirror.NONE, Incisors.TOP, 0, false, false)))
        .startsWith("the file has no Exif Orientation that says which way is up");
  }

  /** A right buccal picture whose incisors lie at the left is mirrored, or of the left side. */
  @Test
  void aSideThatContradictsTheIncisorsIsRefused() {
    assertThat(refusal("right-buccal", new Capture(Mirror.NONE, Incisors.LEFT, 1, false, false)))
        .isEqualTo(
            "what is said of this picture can't all be true for the view Right buccal: stated: taken"
                + " without a mirror; Exif Orientation 1: the raw picture's top edge is up; stated:"
                + " incisors at the raw picture's left edge: check the view's side, the mirror and the"
                + " edges on the preview");
  }

  private static final String LOOK =
      ": look at the picture itself, as the look sheet shows it, and say the mirror for it: none, as"
          + " shot or corrected; in a list add \"seen\", as in \"none seen\"";

  @Test
  void aFrontLensOrEditingNeedsAPersonsLook() {
    for (Mirror mirror : List.of(Mirror.NONE, Mirror.AS_SHOT, Mirror.CORRECTED)) {
      Capture frontLens = new Capture(mirror, null, 1, true, false);
      assertThat(refusal("right-buccal", frontLens))
          .isEqualTo(
              "a front-facing lens took this picture and may have stored it as a mirror image"
                  + LOOK);
      Capture edited = new Capture(mirror, null, 1, false, true);
      assertThat(refusal("right-buccal", edited))
          .isEqualTo("this picture was edited and may have been flipped already" + LOOK);
      assertThat(lay("right-buccal", frontLens.seenByPerson())).isInstanceOf(Outcome.Done.class);
      assertThat(lay("right-buccal", edited.seenByPerson())).isInstanceOf(Outcome.Done.class);
    }
    assertThat(
            refusal(
                "right-buccal", new Capture(Mirror.UNKNOWN, null, 1, false, true).seenByPerson()))
        .startsWith("nobody said whether this picture was taken in a mirror");
  }

  @Test
  void aFaceInAMirrorNeedsAPersonsLook() {
    for (Mirror mirror : List.of(Mirror.AS_SHOT, Mirror.CORRECTED)) {
      assertThat(refusal("face-rest", new Capture(mirror, null, 1, false, false)))
          .isEqualTo(
              "a face is not photographed in a mirror, yet this Face at rest is said to be" + LOOK);
    }
  }

  /**
   * Who looked saw the picture as Exif turns it (Exif 2.32, Orientation; a reflecting value turns
   * the stored pixels over). What was seen true-handed is laid by that very turn; what was seen as
   * a mirror image is flipped after it.
   */
  @ParameterizedTest
  @ValueSource(ints = {2, 4, 5, 7})
  void aReflectedFileIsLaidByWhatAPersonSaw(int exif) {
    Turn shown = Turn.ofExif(exif);
    Capture none = new Capture(Mirror.NONE, null, exif, false, false);

    assertThat(refusal("frontal", none))
        .isEqualTo(
            "Exif Orientation "
                + exif
                + " says the stored picture is a mirror image, which no camera facing a patient"
                + " stores; right and left are not known"
                + LOOK);
    assertThat(lay("frontal", none.seenByPerson()).orThrow().turn()).isEqualTo(shown);
    Capture mirrored = new Capture(Mirror.AS_SHOT, null, exif, false, false);
    assertThat(lay("right-buccal", mirrored.seenByPerson()).orThrow().turn())
        .isEqualTo(shown.then(Turn.FLIP_HORIZONTAL));
    char looking = view("upper-occlusal").looking().letter();
    for (VectorOracle.Raw seen : VectorOracle.rawPictures(looking, true)) {
      Incisors onSheet =
          Stream.of(Incisors.values())
              .filter(edge -> seen.at(edge.name()) == 'A')
              .findFirst()
              .orElseThrow();
      VectorOracle.Raw stored = VectorOracle.turned(seen, shown.inverse());
      Capture occlusal =
          new Capture(Mirror.AS_SHOT, onSheet.inRaw(shown), exif, false, false).seenByPerson();
      assertThat(VectorOracle.turned(stored, lay("upper-occlusal", occlusal).orThrow().turn()))
          .as("incisors seen %s", onSheet)
          .isEqualTo(new VectorOracle.Raw('L', 'P'));
    }
  }

  /** A person's word on the top counts instead of Exif, and suffices without it. */
  @Test
  void aPersonCanStateTheTop() {
    Capture wrongExif = new Capture(Mirror.NONE, null, 6, false, false).withUp(Edge.TOP);
    assertThat(lay("frontal", wrongExif).orThrow().turn()).isEqualTo(Turn.NONE);
    Capture noExif = new Capture(Mirror.NONE, null, null, false, false).withUp(Edge.BOTTOM);
    assertThat(lay("frontal", noExif).orThrow().turn()).isEqualTo(Turn.ROTATE_180);
  }

  /** What a person points at on a preview is brought back to the raw picture. */
  @Test
  void edgesSeenOnAPreviewAreBroughtBack() {
    for (Turn turn : Turn.values()) {
      for (Edge edge : Edge.values()) {
        VectorOracle.Raw raw = new VectorOracle.Raw('L', 'F');
        char there = VectorOracle.turned(raw, turn).at(edge.name());
        assertThat(raw.at(edge.inRaw(turn).name())).as("%s %s", turn, edge).isEqualTo(there);
        assertThat(Incisors.valueOf(edge.name()).inRaw(turn).name())
            .isEqualTo(edge.inRaw(turn).name());
      }
    }
  }

  private static View view(String key) {
    return ViewCatalogue.standard().byKey(key).orElseThrow();
  }

  private static Outcome<Laid> lay(String view, Capture capture) {
    return OrientationRule.lay(view(view), LowerArchShown.INCISORS_DOWN, capture);
  }

  private static String refusal(String view, Capture capture) {
    Outcome<Laid> outcome = lay(view, capture);
    assertThat(outcome).isInstanceOf(Outcome.Refused.class);
    return ((Outcome.Refused<Laid>) outcome).sentence();
  }
}
