package org.vestibule.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** An edited copy and its original are one case, and a burst is several. */
class SameShotTest {

  @Test
  void anEditedCopyBelongsToItsOriginalByName() {
    assertThat(groups(photo("a/IMG_1234.JPG", 1, null), photo("a/IMG_E1234.JPG", 2, null)))
        .containsExactly(List.of("a/IMG_1234.JPG", "a/IMG_E1234.JPG"));
    assertThat(groups(photo("a/IMG_1234.JPG", 1, null), photo("b/IMG_E1234.JPG", 2, null)))
        .isEmpty();
    assertThat(groups(photo("IMG_1234.JPG", 1, null), photo("IMG_E1235.JPG", 2, null))).isEmpty();
    assertThat(groups(photo("SIDE_1234.JPG", 1, null), photo("SIDEE1234.JPG", 2, null))).isEmpty();
  }

  @Test
  void aCopyBelongsToItsOriginalByTimeToTheFraction() {
    assertThat(groups(photo("a/1.jpg", 1, "042"), photo("b/other.jpg", 2, "042")))
        .containsExactly(List.of("a/1.jpg", "b/other.jpg"));
    assertThat(groups(photo("1.jpg", 1, "042"), photo("2.jpg", 2, "043"))).isEmpty();
    assertThat(groups(photo("1.jpg", 1, null), photo("2.jpg", 2, null))).isEmpty();
    assertThat(groups(photo("1.jpg", 1, "000"), photo("2.jpg", 2, "000"))).isEmpty();
  }

  @Test
  void groupsThatShareAPhotographAreOne() {
    assertThat(
            groups(
                photo("IMG_1234.jpg", 1, "1"),
                photo("x.jpg", 2, "2"),
                photo("IMG_E1234.jpg", 3, "2")))
        .containsExactly(List.of("IMG_1234.jpg", "x.jpg", "IMG_E1234.jpg"));
  }

  private static List<List<String>> groups(Photo... photos) {
    Roll roll = new Roll(Arrays.asList(photos), List.of());
    return roll.sameShot().stream()
        .map(group -> group.stream().map(photo -> photo.arrival().name()).toList())
        .toList();
  }

  private static Photo photo(String name, int seed, @Nullable String subsecond) {
    TinyTiff tiff =
        new TinyTiff(ByteOrder.BIG_ENDIAN)
            .text(Tag.MODEL, "Model 1")
            .text(Tag.DATE_TIME_ORIGINAL, "2026:11:24 09:30:05");
    if (subsecond != null) {
      tiff.text(Tag.SUB_SEC_ORIGINAL, subsecond);
    }
    return ReadOne.photo(TestJpeg.of(seed).exif(tiff), name);
  }
}
