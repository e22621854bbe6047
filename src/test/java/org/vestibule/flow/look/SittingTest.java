package org.vestibule.flow.look;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.vestibule.base.ContentHash;
import org.vestibule.intake.Arrival;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.intake.Photo;
import org.vestibule.jpeg.JpegStructure;
import org.vestibule.samples.PhoneJpeg;

/** Photographs are grouped by camera and by pauses between them. */
class SittingTest {

  private static final LocalDateTime MORNING = LocalDateTime.of(2026, 11, 24, 9, 30);
  private static final JpegStructure ANY =
      JpegStructure.read(
              PhoneJpeg.builder(new BufferedImage(16, 16, BufferedImage.TYPE_INT_RGB)).bytes())
          .orThrow();

  @Test
  void aLongPauseSeparatesAndAShortOneDoesNot() {
    assertThat(
            names(
                photo("c", "Model 1", MORNING.plusMinutes(61)),
                photo("b", "Model 1", MORNING.plusMinutes(30)),
                photo("a", "Model 1", MORNING)))
        .containsExactly(List.of("a", "b"), List.of("c"));
  }

  @Test
  void twoCamerasAtOneTimeAreTwoSittings() {
    assertThat(
            names(
                photo("a", "Model 1", MORNING),
                photo("b", "Model 2", MORNING.plusMinutes(1)),
                photo("c", "Model 1", MORNING.plusMinutes(2))))
        .containsExactly(List.of("a", "c"), List.of("b"));
  }

  @Test
  void photographsWithoutATimeComeLastTogether() {
    assertThat(
            names(
                photo("b", "Model 2", null),
                photo("a", "Model 1", null),
                photo("c", "Model 1", MORNING)))
        .containsExactly(List.of("c"), List.of("a", "b"));
  }

  @Test
  void anEmptyFolderHasNone() {
    assertThat(names()).isEmpty();
  }

  private static List<List<String>> names(Photo... photos) {
    return Sitting.of(List.of(photos), Duration.ofMinutes(30)).stream()
        .map(sitting -> sitting.photos().stream().map(photo -> photo.arrival().name()).toList())
        .toList();
  }

  private static Photo photo(String name, String model, @Nullable LocalDateTime taken) {
    return new Photo(
        new Arrival(Path.of(name), name, 1, Instant.EPOCH, ContentHash.of(new byte[0])),
        CaptureFacts.builder().model(model).takenAt(taken).build(),
        ANY,
        List.of(),
        List.of());
  }
}
