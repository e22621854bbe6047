package org.vestibule.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.vestibule.assign.AssignSources;
import org.vestibule.assign.Assigner;
import org.vestibule.assign.Assignment;
import org.vestibule.assign.Assignment.Decided;
import org.vestibule.assign.Assignment.Waits;
import org.vestibule.assign.Manifest;
import org.vestibule.assign.RollAssigner;
import org.vestibule.assign.VisitList;
import org.vestibule.assign.WaitReason.Kind;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;
import org.vestibule.dental.LowerArchShown;
import org.vestibule.dental.Notation;
import org.vestibule.dental.TeethReader;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.intake.Intake;
import org.vestibule.intake.IntakeRules;
import org.vestibule.intake.Photo;
import org.vestibule.intake.Roll;
import org.vestibule.jpeg.TranscodePlan;
import org.vestibule.jpeg.Transcoder;

/** The roll, its visits and its manifest lead to what {@code expected.csv} says. */
class SampleAssignTest {

  private static final Map<String, Photo> PHOTOS = new HashMap<>();
  private static final Map<String, Assignment> BECAME = new HashMap<>();
  private static List<String> warnings = List.of();

  @BeforeAll
  static void assignAll() {
    Roll roll =
        Intake.read(
            SampleFolder.roll(),
            IntakeRules.DEFAULT.withoutSettling(),
            Clock.fixed(Instant.parse("2026-03-14T06:00:00Z"), ZoneOffset.UTC));
    AssignSources sources =
        new AssignSources(
            VisitList.read(SampleFolder.visits(), "CROOKED-LANTERN").orThrow(),
            Manifest.read(SampleFolder.manifest()).orThrow(),
            List.of(),
            true,
            List.of(),
            ViewCatalogue.standard(),
            new TeethReader(Notation.ISO_3950),
            LowerArchShown.INCISORS_DOWN,
            ZoneId.of("Europe/Vienna"),
            "B. Tinderbell");
    RollAssigner assigner = new Assigner(sources).forRoll(roll);
    warnings = assigner.warnings();
    for (Photo photo : roll.photos()) {
      PHOTOS.put(photo.arrival().name(), photo);
      BECAME.put(photo.arrival().name(), assigner.assign(photo, List.of()));
    }
  }

  private static List<Map<String, String>> expected(String fate) throws IOException {
    return SampleFolder.expected().stream().filter(r -> r.get("expected").equals(fate)).toList();
  }

  @Test
  void everyRowOfTheManifestFindsItsPhotograph() {
    assertThat(warnings).isEmpty();
  }

  /** The turn that the product found is applied with our own vectors. */
  @Test
  void whatShouldBeFiledIsDecidedAndLaidAsItsViewIsShown() throws IOException {
    for (Map<String, String> hope : expected("filed")) {
      String file = hope.get("file");
      assertThat(BECAME.get(file)).as(file).isInstanceOf(Decided.class);
      Decided decided = (Decided) BECAME.get(file);
      Shot shot = shot(file);
      RawState.Axes raw = RawState.rawFor(shot.seen(), shot.exif());
      assertThat(decided.decision().view().key()).as(file).isEqualTo(hope.get("view"));
      assertThat(turned(raw, decided.laid().turn()).toString())
          .as(file)
          .isEqualTo(hope.get("patient_orientation"));
      assertThat(transcoded(file)).as(file).isInstanceOf(Outcome.Done.class);
    }
  }

  /** Rows and columns change places first, then rows are reversed, then their order. */
  private static RawState.Axes turned(RawState.Axes raw, Turn turn) {
    char right = turn.swapsAxes() ? raw.down() : raw.right();
    char down = turn.swapsAxes() ? raw.right() : raw.down();
    return new RawState.Axes(
        turn.flipsHorizontally() ? RawState.opposite(right) : right,
        turn.flipsVertically() ? RawState.opposite(down) : down);
  }

  @Test
  void whatShouldWaitWaitsForTheReasonExpected() throws IOException {
    for (Map<String, String> hope : expected("waits")) {
      String file = hope.get("file");
      if (hope.get("reason").equals("edge-blocks")) {
        assertThat(transcoded(file)).as(file).isInstanceOf(Outcome.Refused.class);
        continue;
      }
      assertThat(BECAME.get(file)).as(file).isInstanceOf(Waits.class);
      assertThat(((Waits) BECAME.get(file)).reasons())
          .as(file)
          .anySatisfy(
              reason -> {
                assertThat(reason.kind()).isEqualTo(kind(hope.get("reason")));
                assertThat(reason.sentence()).contains(word(hope.get("reason")));
              });
    }
  }

  private static Kind kind(String reason) {
    return switch (reason) {
      case "edited-copy" -> Kind.SAME_SHOT;
      case "nobody-named-it" -> Kind.NO_VIEW;
      case "outside-visit" -> Kind.CONTRADICTION;
      default -> Kind.ORIENTATION;
    };
  }

  /** What the sentence must name, so that a person sees the cause. */
  private static String word(String reason) {
    return switch (reason) {
      case "edited-copy" -> "versions";
      case "nobody-named-it" -> "shows";
      case "outside-visit" -> "visit";
      case "incisors-unknown" -> "incisors";
      case "reflected-orientation" -> "Exif Orientation";
      case "front-camera" -> "front";
      default -> throw new IllegalArgumentException("no reason " + reason);
    };
  }

  private static Outcome<?> transcoded(String file) {
    Decided decided = (Decided) BECAME.get(file);
    return Transcoder.transcode(
        PHOTOS.get(file).bytes().orThrow(),
        new TranscodePlan(decided.laid().turn(), null, decided.decision().mayTrim()));
  }

  private static Shot shot(String file) {
    return SampleRoll.plan().stream().filter(s -> s.file().equals(file)).findFirst().orElseThrow();
  }
}
