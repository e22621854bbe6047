package org.vestibule.jpeg;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;

/**
 * Real photographs from the folder that {@code VESTIBULE_PHOTOS} names: each goes through every
 * turn and is proved, or is refused with a reason.
 */
final class CorpusTest {

  @Test
  void carriesEveryRealPhotographOrSaysWhyNot() throws IOException {
    String folder = System.getenv("VESTIBULE_PHOTOS");
    if (folder == null) {
      System.err.println("SKIPPED: VESTIBULE_PHOTOS names no folder of real photographs");
    }
    Assumptions.assumeTrue(folder != null, "VESTIBULE_PHOTOS names no folder");
    List<Path> photos;
    try (Stream<Path> files = Files.walk(Path.of(folder))) {
      photos =
          files
              .filter(file -> file.toString().toLowerCase(Locale.ROOT).endsWith(".jpg"))
              .sorted()
              .toList();
    }
    assertThat(photos).isNotEmpty();
    int carried = 0;
    for (Path photo : photos) {
      if (isCarried(photo)) {
        carried++;
      }
    }
    assertThat(carried).isGreaterThan(photos.size() / 2);
  }

  private static boolean isCarried(Path photo) throws IOException {
    byte[] bytes = Files.readAllBytes(photo);
    Outcome<Coefficients> decoded = Coefficients.decode(bytes);
    if (decoded instanceof Outcome.Refused<Coefficients> refused) {
      System.err.println(photo.getFileName() + " is refused: " + refused.sentence());
      assertThat(Transcoder.transcode(bytes, TranscodePlan.AS_IS))
          .isEqualTo(refused.<Transcoded>as());
      return false;
    }
    Coefficients source = decoded.orThrow();
    for (Turn turn : Turn.values()) {
      TranscodePlan plan = new TranscodePlan(turn, null, true);
      Transcoded result = Transcoder.transcode(bytes, plan).orThrow();
      Coefficients read = Coefficients.decode(result.bytes()).orThrow();
      assertThat(Proof.same(source, plan, read))
          .as("%s %s", photo.getFileName(), turn)
          .isInstanceOf(Outcome.Done.class);
      assertThat(read.warnings()).as("%s %s", photo.getFileName(), turn).isEmpty();
      assertThat(read.structure().embedded()).isEmpty();
    }
    Raster preview = Preview.of(bytes, 200, Turn.NONE).orThrow();
    assertThat(Math.max(preview.width(), preview.height())).isLessThanOrEqualTo(200);
    return true;
  }
}
