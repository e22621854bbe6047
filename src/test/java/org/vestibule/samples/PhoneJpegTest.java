package org.vestibule.samples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.awt.image.BufferedImage;
import java.nio.ByteBuffer;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.vestibule.ExternalTool;

/** What the builder writes is what an independent reader (exiftool) reads. */
class PhoneJpegTest {

  private static final BufferedImage PICTURE = Cartoon.mug(48, 32);

  private static JsonNode read(byte[] file) throws Exception {
    ExternalTool tool = ExternalTool.require("exiftool", "libimage-exiftool-perl");
    return new ObjectMapper()
        .readTree(tool.run(file, "-j", "-n", "-a", "-G1", "-").output())
        .get(0);
  }

  @Test
  void factsComeBackAsTheyWereGiven() throws Exception {
    JsonNode read =
        read(
            PhoneJpeg.builder(PICTURE)
                .camera("Examplon", "Examplon P1")
                .takenAt(LocalDateTime.of(2026, 10, 25, 2, 30, 9))
                .subSeconds("045")
                .offset(ZoneOffset.ofHoursMinutes(-3, -30))
                .orientation(7)
                .position(-33.7575, 151.2125, 12)
                .exposure(250, 2.4, 640)
                .focal(6.86, 24)
                .digitalZoom(5, 2)
                .bodySerial("S-1")
                .lens("front")
                .bytes());
    assertThat(read.path("ExifIFD:DateTimeOriginal").asText()).isEqualTo("2026:10:25 02:30:09");
    assertThat(read.path("Composite:SubSecDateTimeOriginal").asText())
        .isEqualTo("2026:10:25 02:30:09.045-03:30");
    assertThat(read.path("IFD0:Orientation").asInt()).isEqualTo(7);
    assertThat(read.path("Composite:GPSLatitude").asDouble()).isCloseTo(-33.7575, within(1e-6));
    assertThat(read.path("Composite:GPSLongitude").asDouble()).isCloseTo(151.2125, within(1e-6));
    assertThat(read.path("GPS:GPSAltitude").asInt()).isEqualTo(12);
    assertThat(read.path("ExifIFD:ExposureTime").asDouble()).isEqualTo(0.004);
    assertThat(read.path("ExifIFD:FNumber").asDouble()).isEqualTo(2.4);
    assertThat(read.path("ExifIFD:ISO").asInt()).isEqualTo(640);
    assertThat(read.path("ExifIFD:FocalLength").asDouble()).isEqualTo(6.86);
    assertThat(read.path("ExifIFD:DigitalZoomRatio").asDouble()).isEqualTo(2.5);
    assertThat(read.path("ExifIFD:SerialNumber").asText()).isEqualTo("S-1");
    assertThat(read.path("ExifIFD:LensModel").asText()).isEqualTo("front");
    assertThat(read.has("ExifTool:Warning")).isFalse();
  }

  private static int marker(byte[] file, int at) {
    return ByteBuffer.wrap(file).getShort(at) & 0xffff;
  }

  @Test
  void aSecondPictureIsAnnouncedWhereItLies() throws Exception {
    byte[] file =
        PhoneJpeg.builder(PICTURE).secondPicture(PICTURE).comment("x").trailingVideo(99).bytes();
    JsonNode read = read(file);
    int start = read.path("MPImage2:MPImageStart").asInt();
    int end = start + read.path("MPImage2:MPImageLength").asInt();
    assertThat(marker(file, start)).isEqualTo(0xffd8);
    assertThat(marker(file, end - 2)).isEqualTo(0xffd9);
    assertThat(file.length - end).as("24 of ftyp, 8 and 99 of mdat").isEqualTo(131);
  }

  @ParameterizedTest
  @EnumSource(Sampling.class)
  void samplingIsWrittenAsAsked(Sampling sampling) throws Exception {
    JsonNode read = read(PhoneJpeg.builder(PICTURE).sampling(sampling).progressive().bytes());
    assertThat(read.path("File:YCbCrSubSampling").asText())
        .isEqualTo(sampling.across + " " + sampling.down);
    assertThat(read.path("File:EncodingProcess").asInt()).as("2 is progressive").isEqualTo(2);
  }

  @Test
  void nothingIsWrittenThatWasNotAskedFor() throws Exception {
    JsonNode read = read(PhoneJpeg.builder(PICTURE).bytes());
    read.fieldNames()
        .forEachRemaining(
            name ->
                assertThat(name)
                    .matches("SourceFile|(File|System|ExifTool|Composite):.*")
                    .doesNotContain("Comment"));
  }
}
