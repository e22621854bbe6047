package org.vestibule.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.ByteOrder;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Times, lenses and numbers that a camera may write in several ways, or wrongly. */
class CaptureFactsTest {

  @Test
  void aZoneIsKeptOnlyIfTheFileHasOne() {
    CaptureFacts without = facts(tiff().text(Tag.DATE_TIME_ORIGINAL, "2026:11:24 09:30:05"));
    assertThat(without.takenAt()).isEqualTo("2026-11-24T09:30:05");
    assertThat(without.offset()).isNull();
    assertThat(without.moment()).isNull();
    CaptureFacts with =
        facts(
            tiff()
                .text(Tag.DATE_TIME_ORIGINAL, "2026:11:24 09:30:05")
                .text(Tag.SUB_SEC_ORIGINAL, "042")
                .text(Tag.OFFSET_TIME_ORIGINAL, "+01:00"));
    assertThat(with.takenAt()).isEqualTo("2026-11-24T09:30:05.042");
    assertThat(with.subsecond()).isEqualTo("042");
    assertThat(with.offset()).isEqualTo(ZoneOffset.ofHours(1));
    assertThat(with.moment()).isEqualTo(Instant.parse("2026-11-24T08:30:05.042Z"));
  }

  @ParameterizedTest
  @CsvSource({"-03:30,-03:30", "Z,Z", "+0530,+05:30", "'   :  ',", "+25:00,", "CET,"})
  void readsOffsetsAndLeavesImpossibleOnesAside(String text, String expected) {
    CaptureFacts facts =
        facts(
            tiff()
                .text(Tag.DATE_TIME_ORIGINAL, "2026:11:24 09:30:05")
                .text(Tag.OFFSET_TIME_ORIGINAL, text));
    assertThat(facts.offset() == null ? null : facts.offset().getId()).isEqualTo(expected);
  }

  @Test
  void noTimeIsMadeUp() {
    CaptureFacts changedOnly = facts(tiff().text(Tag.MODIFY_DATE, "2026:11:24 09:30:05"));
    assertThat(changedOnly.takenAt()).isNull();
    assertThat(facts(tiff().text(Tag.DATE_TIME_ORIGINAL, "0000:00:00 00:00:00")).takenAt())
        .isNull();
    Photo odd =
        ReadOne.photo(
            TestJpeg.of(1).exif(tiff().text(Tag.DATE_TIME_ORIGINAL, "2026:13:40 09:30:05")));
    assertThat(odd.facts().takenAt()).isNull();
    assertThat(odd.warnings())
        .containsExactly(
            "the time of capture is not written as YYYY:MM:DD HH:MM:SS and was left aside");
  }

  @Test
  void theTimeOfDigitisingIsTakenWithAWarning() {
    Photo photo =
        ReadOne.photo(
            TestJpeg.of(1).exif(tiff().text(Tag.DATE_TIME_DIGITIZED, "2026:11:24 09:30:05")));
    assertThat(photo.facts().takenAt()).isEqualTo("2026-11-24T09:30:05");
    assertThat(photo.warnings())
        .containsExactly(
            "the time is when the picture was digitised; no time of capture is stated");
  }

  @Test
  void aClockThatWasNeverSetIsSaid() {
    assertThat(
            ReadOne.photo(
                    TestJpeg.of(1).exif(tiff().text(Tag.DATE_TIME_ORIGINAL, "1970:01:01 00:00:00")))
                .warnings())
        .containsExactly("the year of capture is 1970: the camera's clock was not set");
  }

  /**
   * Clock changes of 2026 in the European Union: 29 March 02:00 to 03:00 and 25 October 03:00 to
   * 02:00 Central European time (Directive 2000/84/EC: last Sundays, 01:00 UTC).
   */
  @ParameterizedTest
  @CsvSource({
    "2026-10-25T01:59:59,,CLEAR",
    "2026-10-25T02:00:00,,DOUBLED",
    "2026-10-25T02:59:59,,DOUBLED",
    "2026-10-25T03:00:00,,CLEAR",
    "2026-10-25T02:30:00,+02:00,CLEAR",
    "2026-10-25T02:30:00,+01:00,CLEAR",
    "2026-03-29T01:59:59,,CLEAR",
    "2026-03-29T02:30:00,,SKIPPED",
    "2026-03-29T03:00:00,,CLEAR",
    "2026-07-01T12:00:00,+01:00,OTHER_ZONE",
    ",,NO_TIME",
  })
  void knowsTheDoubledAndTheMissingHour(LocalDateTime time, String offset, WallClock expected) {
    CaptureFacts facts =
        CaptureFacts.builder()
            .takenAt(time)
            .offset(offset == null ? null : ZoneOffset.of(offset))
            .build();
    assertThat(facts.clockAt(ZoneId.of("Europe/Vienna"))).isEqualTo(expected);
  }

  /**
   * Check values derived from the APEX definitions: Tv 8.643856 is 1/400 s, Av 1.695994 is f/1.80
   * (CIPA DC-008, from memory).
   */
  @Test
  void readsExposureFromApexValues() {
    CaptureFacts facts =
        facts(
            tiff()
                .signedRational(Tag.SHUTTER_SPEED_VALUE, 8_643_856, 1_000_000)
                .rational(Tag.APERTURE_VALUE, 1_695_994, 1_000_000));
    assertThat(facts.exposureSeconds()).isCloseTo(1.0 / 400, within(1e-8));
    assertThat(facts.fNumber()).isCloseTo(1.8, within(1e-5));
  }

  @ParameterizedTest
  @CsvSource({"0,1,1.0", "0,0,1.0", "3,1,3.0", "5,2,2.5", "1,0,"})
  void readsDigitalZoom(long numerator, long denominator, Double expected) {
    assertThat(facts(tiff().rational(Tag.DIGITAL_ZOOM, numerator, denominator)).digitalZoomRatio())
        .isEqualTo(expected);
  }

  @Test
  void anImpossibleOrientationIsAWarning() {
    Photo photo = ReadOne.photo(TestJpeg.of(1).exif(tiff().shorts(Tag.ORIENTATION, 9)));
    assertThat(photo.facts().orientation()).isNull();
    assertThat(photo.warnings())
        .containsExactly(
            "Exif Orientation is 9, 1 to 8 was expected: the picture is taken as it is");
  }

  @ParameterizedTest
  @CsvSource({
    "Model 1 front camera 2.71mm f/2.2,true",
    "Selfie lens,true",
    "Model 1 back camera 6.81mm f/1.85,false",
    "Waterfront 50mm,false"
  })
  void knowsAFrontCameraByItsLens(String lens, boolean front) {
    assertThat(facts(tiff().text(Tag.LENS_MODEL, lens)).frontLens()).isEqualTo(front);
  }

  @Test
  void namesTheCameraOnce() {
    assertThat(CaptureFacts.builder().make("Acme").model("Acme 5").build().camera())
        .isEqualTo("Acme 5");
    assertThat(CaptureFacts.builder().make("Acme Works").model("5").build().camera())
        .isEqualTo("Acme Works 5");
    assertThat(CaptureFacts.NONE.camera()).isNull();
  }

  /** Bits of the Flash value (CIPA DC-008, from memory). */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0|did not fire",
        "1|fired",
        "9|fired, switched on",
        "16|did not fire, switched off",
        "25|fired, automatic",
        "95|fired, automatic, return light seen, red-eye reduction",
        "32|the camera has no flash",
      })
  void readsFlashOut(int value, String words) {
    assertThat(FlashWords.of(value)).isEqualTo(words);
  }

  private static TinyTiff tiff() {
    return new TinyTiff(ByteOrder.BIG_ENDIAN);
  }

  private static CaptureFacts facts(TinyTiff tiff) {
    return ReadOne.photo(TestJpeg.of(1).exif(tiff)).facts();
  }
}
