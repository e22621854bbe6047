package org.vestibule.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.vestibule.intake.Hidden;
import org.vestibule.intake.Intake;
import org.vestibule.intake.IntakeRules;
import org.vestibule.intake.LeftOut;
import org.vestibule.intake.Photo;
import org.vestibule.intake.Roll;

/** The product's intake finds in the roll what the plan put there. */
class SampleIntakeTest {

  private static final Roll ROLL =
      Intake.read(
          SampleFolder.roll(),
          IntakeRules.DEFAULT.withoutSettling(),
          Clock.fixed(Instant.parse("2026-03-14T06:00:00Z"), ZoneOffset.UTC));

  @Test
  void everyFileThatIsNoPhotographIsLeftOutForTheReasonExpected() throws IOException {
    Map<String, String> expected =
        SampleFolder.expected().stream()
            .filter(row -> row.get("expected").equals("left-out"))
            .collect(Collectors.toMap(row -> row.get("file"), row -> row.get("reason")));
    Map<String, String> found =
        ROLL.leftOut().stream().collect(Collectors.toMap(LeftOut::name, SampleIntakeTest::reason));
    assertThat(new TreeMap<>(found)).isEqualTo(new TreeMap<>(expected));
  }

  private static String reason(LeftOut left) {
    return left.kind().name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  @Test
  void everyPhotographOfThePlanArrivesWithItsFacts() {
    Map<String, Photo> photos =
        ROLL.photos().stream().collect(Collectors.toMap(p -> p.arrival().name(), p -> p));
    assertThat(photos).hasSize(SampleRoll.plan().size());
    for (Shot shot : SampleRoll.plan()) {
      Photo photo = photos.get(shot.file());
      assertThat(photo.facts().takenAt().withNano(0)).as(shot.file()).isEqualTo(shot.taken());
      assertThat(photo.facts().offset()).as(shot.file()).isEqualTo(shot.offset());
      assertThat(photo.facts().orientation()).as(shot.file()).isEqualTo(shot.exif());
      assertThat(photo.facts().frontLens())
          .as(shot.file())
          .isEqualTo(shot.camera().equals("front"));
      assertThat(photo.facts().edited()).as(shot.file()).isEqualTo(shot.has("edited"));
      assertThat(photo.hides(Hidden.Kind.POSITION)).as(shot.file()).isEqualTo(shot.has("gps"));
      assertThat(photo.hides(Hidden.Kind.SECOND_PICTURE))
          .as(shot.file())
          .isEqualTo(shot.has("mpf"));
      assertThat(photo.hides(Hidden.Kind.VIDEO)).as(shot.file()).isEqualTo(shot.has("video"));
    }
  }

  @Test
  void onlyTheEditedCopyAndItsOriginalAreOneShot() {
    assertThat(ROLL.sameShot()).hasSize(1);
    assertThat(ROLL.sameShot().get(0))
        .extracting(photo -> photo.arrival().name())
        .containsExactlyInAnyOrder("IMG_0007.JPG", "IMG_E0007.JPG");
  }
}
