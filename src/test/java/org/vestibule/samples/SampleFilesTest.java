package org.vestibule.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.time.format.DateTimeFormatter;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import org.assertj.core.api.SoftAssertions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.vestibule.ExternalTool;

/** The files of the roll as an independent reader of Exif and JPEG (exiftool) sees them. */
class SampleFilesTest {

  private static final DateTimeFormatter EXIF =
      DateTimeFormatter.ofPattern("yyyy:MM:dd HH:mm:ss", Locale.ROOT);

  private static final Map<String, JsonNode> READ = new HashMap<>();

  @BeforeAll
  static void readAll() throws Exception {
    ExternalTool tool = ExternalTool.require("exiftool", "libimage-exiftool-perl");
    byte[] json =
        tool.run("-j", "-n", "-a", "-U", "-ee", "-G1", SampleFolder.roll().toString()).output();
    for (JsonNode file : new ObjectMapper().readTree(json)) {
      READ.put(file.path("System:FileName").asText(), file);
    }
  }

  private static String text(Shot shot, String key) {
    return READ.get(shot.file()).path(key).asText();
  }

  private static boolean has(Shot shot, String key) {
    return READ.get(shot.file()).has(key);
  }

  @Test
  void timesAndPlacesAreReadAsPlanned() {
    SoftAssertions softly = new SoftAssertions();
    for (Shot shot : SampleRoll.plan()) {
      softly
          .assertThat(text(shot, "ExifIFD:DateTimeOriginal"))
          .as(shot.file())
          .isEqualTo(EXIF.format(shot.taken()));
      String digits = text(shot, "ExifIFD:SubSecTimeOriginal");
      softly
          .assertThat(
              digits.isEmpty() ? "" : String.format(Locale.ROOT, "%03d", Integer.parseInt(digits)))
          .as(shot.file())
          .isEqualTo(shot.subSeconds());
      softly
          .assertThat(text(shot, "ExifIFD:OffsetTimeOriginal"))
          .as(shot.file())
          .isEqualTo(shot.offset() == null ? "" : shot.offset().getId());
      softly.assertThat(has(shot, "GPS:GPSLatitude")).as(shot.file()).isEqualTo(shot.has("gps"));
      if (shot.has("gps")) {
        JsonNode read = READ.get(shot.file());
        softly
            .assertThat(read.path("Composite:GPSLatitude").asDouble())
            .isCloseTo(Camera.LATITUDE, within(1e-6));
        softly
            .assertThat(read.path("Composite:GPSLongitude").asDouble())
            .isCloseTo(Camera.LONGITUDE, within(1e-6));
      }
    }
    softly.assertAll();
  }

  @Test
  void cameraAndPictureAreReadAsPlanned() {
    SoftAssertions softly = new SoftAssertions();
    for (Shot shot : SampleRoll.plan()) {
      boolean duo = shot.camera().equals("duo");
      softly
          .assertThat(text(shot, "IFD0:Model"))
          .as(shot.file())
          .isEqualTo(duo ? "Samplia Duo" : "Examplon P1");
      softly
          .assertThat(text(shot, "ExifIFD:SerialNumber"))
          .as(shot.file())
          .isEqualTo(duo ? "" : Camera.SERIAL);
      softly
          .assertThat(text(shot, "ExifIFD:LensModel").contains("front"))
          .as(shot.file())
          .isEqualTo(shot.camera().equals("front"));
      softly
          .assertThat(text(shot, "ExifIFD:DigitalZoomRatio"))
          .as(shot.file())
          .isEqualTo(shot.has("zoom") ? "3" : duo ? "0" : "1");
      softly
          .assertThat(text(shot, "IFD0:Orientation"))
          .as(shot.file())
          .isEqualTo(Integer.toString(shot.exif()));
      boolean turned = shot.exif() >= 5;
      softly
          .assertThat(text(shot, "File:ImageWidth"))
          .as(shot.file())
          .isEqualTo(Integer.toString(turned ? shot.height() : shot.width()));
      softly
          .assertThat(text(shot, "File:EncodingProcess"))
          .as(shot.file())
          .isEqualTo(shot.has("progressive") ? "2" : "0");
      softly
          .assertThat(text(shot, "File:YCbCrSubSampling"))
          .as(shot.file())
          .isEqualTo(shot.has("gray") ? "" : shot.sampling().across + " " + shot.sampling().down);
      softly
          .assertThat(text(shot, "File:ColorComponents"))
          .as(shot.file())
          .isEqualTo(shot.has("gray") ? "1" : "3");
    }
    softly.assertAll();
  }

  @Test
  void exposureAndLensAreReadAsTheCameraWroteThem() {
    JsonNode back = READ.get("IMG_0005.JPG");
    assertThat(back.path("ExifIFD:ExposureTime").asDouble()).isCloseTo(1 / 120.0, within(1e-6));
    assertThat(back.path("ExifIFD:FNumber").asDouble()).isEqualTo(1.8);
    assertThat(back.path("ExifIFD:ISO").asInt()).isEqualTo(80);
    assertThat(back.path("ExifIFD:FocalLength").asDouble()).isEqualTo(5.7);
    assertThat(back.path("ExifIFD:FocalLengthIn35mmFormat").asInt()).isEqualTo(26);
    assertThat(back.path("ExifIFD:Flash").asInt()).isEqualTo(9);
    assertThat(back.path("ExifIFD:WhiteBalance").asInt()).isZero();
    assertThat(back.path("ExifIFD:OwnerName").asText()).isEqualTo("Crooked Lantern front desk");
  }

  @Test
  void whatHidesInTheFilesIsThere() {
    SoftAssertions softly = new SoftAssertions();
    for (Shot shot : SampleRoll.plan()) {
      softly
          .assertThat(has(shot, "IFD1:ThumbnailImage"))
          .as(shot.file())
          .isEqualTo(shot.has("thumb") || shot.has("face"));
      softly
          .assertThat(text(shot, "ICC_Profile:ProfileDescription"))
          .as(shot.file())
          .isEqualTo(shot.has("icc") ? SampleProfile.DESCRIPTION : "");
      softly
          .assertThat(text(shot, "File:Comment").isEmpty())
          .as(shot.file())
          .isEqualTo(!shot.has("comment"));
      softly
          .assertThat(READ.get(shot.file()).path("XMP-xmpMM:HistoryAction").toString())
          .as(shot.file())
          .isEqualTo(shot.has("edited") ? "[\"flipped\",\"cropped\"]" : "");
      softly
          .assertThat(text(shot, "ExifTool:Warning"))
          .as(shot.file())
          .isEqualTo(shot.has("maker") ? "[minor] Unrecognized MakerNotes" : "");
      softly
          .assertThat(has(shot, "MPImage2:MPImageLength"))
          .as(shot.file())
          .isEqualTo(shot.has("mpf"));
    }
    softly.assertAll();
  }

  @Test
  void theSecondPictureAndTheVideoLieWhereTheyAreSaidToLie() throws Exception {
    byte[] two = Files.readAllBytes(SampleFolder.roll().resolve("IMG_0002.JPG"));
    int start = READ.get("IMG_0002.JPG").path("MPImage2:MPImageStart").asInt();
    int length = READ.get("IMG_0002.JPG").path("MPImage2:MPImageLength").asInt();
    assertThat(start + length).isEqualTo(two.length);
    assertThat(two[start] & 0xff).isEqualTo(0xff);
    assertThat(two[start + 1] & 0xff).isEqualTo(0xd8);
    assertThat(two[start - 2] & 0xff).isEqualTo(0xff);
    assertThat(two[start - 1] & 0xff).isEqualTo(0xd9);
    String video =
        new String(
            Files.readAllBytes(SampleFolder.roll().resolve("IMG_0005.JPG")),
            StandardCharsets.ISO_8859_1);
    assertThat(video).containsPattern("\u00ff\u00d9\0\0\0\u0018ftypmp42");
  }

  @Test
  void theFolderIsSmallAndTheRollLongEnough() throws Exception {
    assertThat(SampleFolder.sizeBytes()).isLessThan(6_000_000);
    assertThat(SampleRoll.plan()).hasSizeBetween(15, 25);
    assertThat(SampleRoll.plan().stream().map(Shot::exif).distinct())
        .containsExactlyInAnyOrder(1, 2, 3, 4, 5, 6, 7, 8);
  }
}
