package org.vestibule.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteOrder;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Traces of editing make handedness unknown; a plain camera file has none. */
class EditingTracesTest {

  @Test
  void aPlainCameraFileHasNone() {
    assertThat(traces(TestJpeg.of(1).exif(camera()))).isEmpty();
  }

  @Test
  void aFileWithoutCameraDataIsSuspect() {
    assertThat(traces(TestJpeg.of(1)))
        .containsExactly(
            "the camera's data is missing: a messenger, a screenshot or a program wrote this file");
  }

  @Test
  void programsThatNameThemselvesAreNoticed() {
    String words = "Exif names a program that processed the picture";
    assertThat(traces(TestJpeg.of(1).exif(camera().text(Tag.PROCESSING_SOFTWARE, "x"))))
        .containsExactly(words);
    assertThat(traces(TestJpeg.of(1).exif(camera().text(Tag.EDITING_SOFTWARE, "x"))))
        .containsExactly(words);
    assertThat(traces(TestJpeg.of(1).exif(camera()).segment(0xED, "Photoshop 3.0\0", new byte[2])))
        .containsExactly("an image editor left its own data (APP13)");
  }

  @Test
  void xmpHistoryAndSettingsAreNoticed() {
    assertThat(traces(TestJpeg.of(1).exif(camera()).xmp("<xmpMM:History/>")))
        .containsExactly("XMP holds a history of changes");
    assertThat(traces(TestJpeg.of(1).exif(camera()).xmp("<x stEvt:action='saved'/>")))
        .containsExactly("XMP holds a history of changes");
    assertThat(traces(TestJpeg.of(1).exif(camera()).xmp("<x crs:Tint='1'/>")))
        .containsExactly("XMP holds settings of an image editor");
    assertThat(traces(TestJpeg.of(1).exif(camera()).xmp("<x hdrgm:Version='1'/>"))).isEmpty();
  }

  @Test
  void aLaterChangeIsNoticedAndWritingTimeIsNot() {
    String words = "it was changed at another time than it was taken";
    assertThat(traces(TestJpeg.of(1).exif(camera().text(Tag.MODIFY_DATE, "2026:11:24 09:31:05"))))
        .isEmpty();
    assertThat(traces(TestJpeg.of(1).exif(camera().text(Tag.MODIFY_DATE, "2026:11:24 09:31:06"))))
        .containsExactly(words);
  }

  @Test
  void anotherSizeThanTheCameraWroteIsNoticed() {
    assertThat(traces(TestJpeg.of(32, 16, 1).exif(size(32, 16)))).isEmpty();
    assertThat(traces(TestJpeg.of(32, 16, 1).exif(size(16, 32))))
        .containsExactly("width and height changed places since the capture: it was turned");
    assertThat(traces(TestJpeg.of(32, 16, 1).exif(size(64, 32))))
        .containsExactly("its size is not the one the camera wrote: it was cropped or scaled");
    assertThat(ReadOne.photo(TestJpeg.of(32, 16, 1).exif(size(64, 32))).warnings())
        .containsExactly("Exif says 64 x 32 samples, the picture has 32 x 16");
  }

  @Test
  void aNoteOfEditsBesideItIsNoticedForTheOriginalAndTheCopy() {
    String words = "a note of edits made on the phone (.aae) lies beside it";
    TestJpeg jpeg = TestJpeg.of(1).exif(camera());
    assertThat(ReadOne.photo(jpeg, "a/IMG_0123.JPG", "a/IMG_0123.AAE").facts().editingTraces())
        .containsExactly(words);
    assertThat(ReadOne.photo(jpeg, "a/IMG_E0123.JPG", "a/IMG_0123.aae").facts().editingTraces())
        .containsExactly("its name, with an E before the number, is that of an edited copy", words);
    assertThat(ReadOne.photo(jpeg, "a/IMG_E0123.JPG").facts().editingTraces())
        .containsExactly("its name, with an E before the number, is that of an edited copy");
    assertThat(ReadOne.photo(jpeg, "a/IMG_0123.JPG", "b/IMG_0123.AAE").facts().editingTraces())
        .isEmpty();
  }

  private static TinyTiff camera() {
    return new TinyTiff(ByteOrder.LITTLE_ENDIAN)
        .text(Tag.MODEL, "Model 1")
        .text(Tag.DATE_TIME_ORIGINAL, "2026:11:24 09:30:05");
  }

  private static TinyTiff size(int width, int height) {
    return camera().longs(Tag.EXIF_WIDTH, width).longs(Tag.EXIF_HEIGHT, height);
  }

  private static List<String> traces(TestJpeg jpeg) {
    return ReadOne.photo(jpeg).facts().editingTraces();
  }
}
