package org.vestibule.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;

/** The capture facts against an independent reader (exiftool), on written and on real files. */
class FactsAgainstExiftoolTest {

  private static final long SEED = 20261125;
  private static final int FILES = 60;

  @TempDir Path folder;

  @Test
  void writtenFilesReadTheSame() throws Exception {
    System.err.println("seed " + SEED);
    Random random = new Random(SEED);
    for (int i = 0; i < FILES; i++) {
      Files.write(folder.resolve(i + ".jpg"), TestJpeg.of(i + 1).exif(tiff(random)).bytes());
    }
    assertThat(compare(folder)).isEqualTo(FILES);
  }

  @Test
  void realFilesReadTheSame() throws Exception {
    assertThat(compare(Corpus.require())).isGreaterThan(30);
  }

  private static TinyTiff tiff(Random random) {
    TinyTiff tiff =
        new TinyTiff(random.nextBoolean() ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN)
            .text(Tag.MAKE, "Invented Works ")
            .text(Tag.MODEL, "Model " + random.nextInt(9))
            .shorts(Tag.ORIENTATION, random.nextInt(8) + 1)
            .shorts(Tag.ISO, random.nextInt(3200) + 25)
            .rational(Tag.FOCAL_LENGTH, random.nextInt(2000) + 100, 100)
            .shorts(Tag.FOCAL_LENGTH_35, random.nextInt(200))
            .shorts(Tag.FLASH, random.nextInt(96))
            .shorts(Tag.WHITE_BALANCE, random.nextInt(2))
            .rational(Tag.DIGITAL_ZOOM, random.nextInt(4), 1)
            .text(Tag.LENS_MODEL, random.nextBoolean() ? "front camera 2.7mm" : "back camera 6mm")
            .longs(Tag.EXIF_WIDTH, 16)
            .longs(Tag.EXIF_HEIGHT, 16);
    LocalDateTime time = LocalDateTime.of(2026, 1, 1, 0, 0).plusSeconds(random.nextInt(30_000_000));
    tiff.text(
        Tag.DATE_TIME_ORIGINAL,
        time.format(DateTimeFormatter.ofPattern("yyyy:MM:dd HH:mm:ss", Locale.ROOT)));
    if (random.nextBoolean()) {
      tiff.text(Tag.OFFSET_TIME_ORIGINAL, random.nextBoolean() ? "+05:30" : "-03:30");
      tiff.text(Tag.SUB_SEC_ORIGINAL, random.nextBoolean() ? "042" : "9");
    }
    if (random.nextBoolean()) {
      tiff.rational(Tag.EXPOSURE_TIME, 1, random.nextInt(4000) + 1);
      tiff.rational(Tag.F_NUMBER, random.nextInt(900) + 100, 100);
    } else {
      tiff.signedRational(Tag.SHUTTER_SPEED_VALUE, random.nextInt(12_000_000), 1_000_000);
      tiff.rational(Tag.APERTURE_VALUE, random.nextInt(6_000_000), 1_000_000);
    }
    return tiff;
  }

  private static int compare(Path photos) throws Exception {
    ExternalTool exiftool = ExternalTool.require("exiftool", "libimage-exiftool-perl");
    String printed =
        exiftool
            .run("-j", "-n", "-r", "-G1", "-IFD0:all", "-ExifIFD:all", photos.toString())
            .text();
    Map<Path, JsonNode> others = new HashMap<>();
    for (JsonNode file : new ObjectMapper().readTree(printed)) {
      others.put(Path.of(file.get("SourceFile").asText()), file);
    }
    Roll roll = Intake.read(photos, IntakeRules.DEFAULT.withoutSettling(), Clock.systemUTC());
    for (Photo photo : roll.photos()) {
      compare(photo, new Other(others.get(photo.arrival().file())));
    }
    return roll.photos().size();
  }

  private static void compare(Photo photo, Other other) {
    CaptureFacts facts = photo.facts();
    String name = photo.arrival().name();
    same(name, facts.exposureSeconds(), other.positive("ExposureTime", "ShutterSpeedValue"));
    same(name, facts.fNumber(), other.positive("FNumber", "ApertureValue"));
    same(name, facts.focalLengthMm(), other.positive("FocalLength"));
    same(name, facts.iso(), other.positive("ISO"));
    same(name, facts.focalLength35Mm(), other.positive("FocalLengthIn35mmFormat"));
    same(name, facts.flash(), other.number("Flash"));
    same(name, facts.whiteBalance(), other.number("WhiteBalance"));
    Double zoom = other.number("DigitalZoomRatio");
    boolean unused = (zoom != null && zoom == 0) || "undef".equals(other.text("DigitalZoomRatio"));
    same(name, facts.digitalZoomRatio(), unused ? Double.valueOf(1) : zoom);
    Double orientation = other.number("Orientation");
    same(
        name,
        facts.orientation(),
        orientation == null || orientation < 1 || orientation > 8 ? null : orientation);
    assertThat(facts.make()).as(name).isEqualTo(other.text("Make"));
    assertThat(facts.model()).as(name).isEqualTo(other.text("Model"));
    assertThat(facts.lens()).as(name).isEqualTo(other.text("LensModel"));
    String time = other.text("DateTimeOriginal");
    if (time != null && !time.startsWith("0000")) {
      assertThat(facts.takenAt()).as(name).isNotNull();
      assertThat(
              facts
                  .takenAt()
                  .format(DateTimeFormatter.ofPattern("yyyy:MM:dd HH:mm:ss", Locale.ROOT)))
          .as(name)
          .isEqualTo(time);
    }
    assertThat(facts.subsecond()).as(name).isEqualTo(other.text("SubSecTimeOriginal"));
    assertThat(facts.offset() == null ? null : facts.offset().getId())
        .as(name)
        .isEqualTo(other.text("OffsetTimeOriginal"));
  }

  private static void same(String name, @Nullable Number ours, @Nullable Double theirs) {
    if (theirs == null) {
      assertThat(ours).as(name).isNull();
    } else {
      assertThat(ours).as(name).isNotNull();
      assertThat(ours.doubleValue()).as(name).isCloseTo(theirs, within(theirs * 1e-6));
    }
  }

  /** What the other reader printed for one file. */
  private record Other(JsonNode file) {

    @Nullable String text(String name) {
      JsonNode value = file.get("ExifIFD:" + name);
      value = value == null ? file.get("IFD0:" + name) : value;
      return value == null || value.asText().isBlank() ? null : value.asText().strip();
    }

    @Nullable Double number(String name) {
      String text = text(name);
      String first = text == null ? "" : text.split(" ", 2)[0];
      return first.matches("-?[0-9.]+([eE]-?\\d+)?") ? Double.valueOf(first) : null;
    }

    /** The first of these that is more than zero. */
    @Nullable Double positive(String... names) {
      for (String name : names) {
        Double value = number(name);
        if (value != null && value > 0) {
          return value;
        }
      }
      return null;
    }
  }
}
