package org.vestibule.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.base.Turn;
import org.vestibule.card.CardReader;
import org.vestibule.jpeg.JpegStructure;
import org.vestibule.jpeg.PreviewReading;
import org.vestibule.jpeg.SoundScan;
import org.vestibule.quality.Measured;
import org.vestibule.quality.QualityAdvice;

/**
 * One look at each photograph of the sample roll against looks that decode for one purpose each.
 */
final class FirstSightTest {

  private static List<Path> photographs() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("samples/roll"))) {
      return files
          .filter(file -> file.toString().toLowerCase(java.util.Locale.ROOT).endsWith(".jpg"))
          .sorted()
          .toList();
    }
  }

  @Test
  void seesWhatEachLookSeesByItself() throws IOException {
    int seen = 0;
    for (Path file : photographs()) {
      byte[] bytes = Files.readAllBytes(file);
      if (!(FirstSight.withCard(bytes, false) instanceof Done<FirstSight.WithCard> done)) {
        assertThat(SoundScan.check(bytes)).as("%s", file).isInstanceOf(Refused.class);
        continue;
      }
      PreviewReading plain =
          PreviewReading.of(bytes, QualityAdvice.PREVIEW_SIDE, Turn.NONE).orThrow();
      assertThat(done.value().sight().measured())
          .as("%s", file)
          .isEqualTo(
              Measured.of(
                  plain.preview(),
                  plain.facts(),
                  JpegStructure.read(bytes).orThrow().frame().size()));
      assertThat(done.value().card()).isEqualTo(CardReader.read(bytes).orThrow());
      assertThat(FirstSight.of(bytes).measured()).isEqualTo(done.value().sight().measured());
      seen++;
    }
    assertThat(seen).isGreaterThan(15);
  }

  @Test
  void aPictureThatBreaksOffHasNothingToSee() throws IOException {
    byte[] bytes = Files.readAllBytes(Path.of("samples/roll/IMG_0003.JPG"));
    byte[] cut = Arrays.copyOf(bytes, bytes.length * 2 / 3);

    assertThat(FirstSight.withCard(cut, true)).isInstanceOf(Refused.class);
    assertThat(FirstSight.of(cut)).isEqualTo(FirstSight.NONE);
  }
}
