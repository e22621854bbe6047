package org.vestibule.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.vestibule.ExternalTool;

/** What hides in a file is named, one kind at a time, and the value itself never is. */
class HiddenTest {

  @Test
  void aBareFileHidesNothing() {
    assertThat(kinds(TestJpeg.of(1))).isEmpty();
    assertThat(kinds(TestJpeg.of(1).exif(tiff().text(Tag.MODEL, "Model 1")))).isEmpty();
  }

  @Test
  void eachKindIsFoundAlone() {
    only(Hidden.Kind.POSITION, tiff().latitude(47));
    only(Hidden.Kind.SERIAL_NUMBER, tiff().text(Tag.BODY_SERIAL, "SECRET"));
    only(Hidden.Kind.SERIAL_NUMBER, tiff().text(Tag.LENS_SERIAL, "SECRET"));
    only(Hidden.Kind.OWNER, tiff().text(Tag.OWNER, "SECRET"));
    only(Hidden.Kind.OWNER, tiff().text(Tag.ARTIST, "SECRET"));
    only(Hidden.Kind.OWNER, tiff().text(Tag.COPYRIGHT, "SECRET"));
    only(Hidden.Kind.CAPTION, tiff().text(Tag.IMAGE_DESCRIPTION, "SECRET"));
    only(Hidden.Kind.CAPTION, tiff().undefined(Tag.USER_COMMENT, ascii("ASCII\0\0\0SECRET")));
    only(Hidden.Kind.UNIQUE_ID, tiff().text(Tag.UNIQUE_ID, "SECRET"));
    only(Hidden.Kind.MAKER_NOTE, tiff().undefined(Tag.MAKER_NOTE, ascii("SECRETSECRET")));
    only(Hidden.Kind.COMMENT, TestJpeg.of(1).segment(0xFE, "", ascii("SECRET")));
    only(Hidden.Kind.XMP, TestJpeg.of(1).xmp("<x>SECRET</x>"));
    only(Hidden.Kind.OTHER, TestJpeg.of(1).segment(0xEB, "SECRET", new byte[8]));
    only(Hidden.Kind.OTHER, TestJpeg.of(1).followedBy(ascii("SECRET")));
    only(Hidden.Kind.SECOND_PICTURE, TestJpeg.of(1).followedBy(TestJpeg.of(2).bytes()));
    only(
        Hidden.Kind.VIDEO,
        TestJpeg.of(1)
            .followedBy(
                HexFormat.of().parseHex("00000018667479706D703432000000006D70343269736F6D")));
  }

  @Test
  void blanksAreNoCaption() {
    assertThat(kinds(TestJpeg.of(1).exif(tiff().text(Tag.IMAGE_DESCRIPTION, "   ")))).isEmpty();
    assertThat(
            kinds(
                TestJpeg.of(1)
                    .exif(tiff().undefined(Tag.USER_COMMENT, ascii("ASCII\0\0\0     \0\0")))))
        .isEmpty();
  }

  @Test
  void xmpTellsOfMapsPlacesAndSerials() {
    assertThat(kinds(TestJpeg.of(1).xmp("<rdf hdrgm:Version='1.0'/>")))
        .containsExactly(Hidden.Kind.GAIN_MAP, Hidden.Kind.XMP);
    assertThat(kinds(TestJpeg.of(1).xmp("<rdf GDepth:Format='RangeInverse'/>")))
        .containsExactly(Hidden.Kind.DEPTH_MAP, Hidden.Kind.XMP);
    assertThat(kinds(TestJpeg.of(1).xmp("<rdf aux:SerialNumber='1' exif:GPSLatitude='47'/>")))
        .containsExactly(Hidden.Kind.POSITION, Hidden.Kind.SERIAL_NUMBER, Hidden.Kind.XMP);
  }

  /** An independent reader (exiftool) finds a position in the same real files, and in no others. */
  @Test
  void realFilesHideAPositionWhereAnotherReaderFindsOne() throws Exception {
    var corpus = Corpus.require();
    Roll roll = Intake.read(corpus, IntakeRules.DEFAULT.withoutSettling(), Clock.systemUTC());
    String printed =
        ExternalTool.require("exiftool", "libimage-exiftool-perl")
            .run(
                "-r",
                "-q",
                "-if",
                "defined $GPSLatitude",
                "-p",
                "$Directory/$FileName",
                corpus.toString())
            .text();
    List<String> ours =
        roll.photos().stream()
            .filter(photo -> photo.hides(Hidden.Kind.POSITION))
            .map(photo -> photo.arrival().file().toString())
            .toList();
    assertThat(ours).isNotEmpty().containsAll(printed.lines().filter(taken(roll)).toList());
  }

  private static java.util.function.Predicate<String> taken(Roll roll) {
    return line ->
        roll.photos().stream().anyMatch(photo -> photo.arrival().file().toString().equals(line));
  }

  private static TinyTiff tiff() {
    return new TinyTiff(ByteOrder.BIG_ENDIAN);
  }

  private static void only(Hidden.Kind kind, TinyTiff tiff) {
    only(kind, TestJpeg.of(1).exif(tiff));
  }

  private static void only(Hidden.Kind kind, TestJpeg jpeg) {
    List<Hidden> hidden = ReadOne.photo(jpeg).hidden();
    assertThat(hidden.stream().map(Hidden::kind)).containsExactly(kind);
    assertThat(hidden.get(0).sentence()).isNotBlank().doesNotContain("SECRET");
  }

  private static List<Hidden.Kind> kinds(TestJpeg jpeg) {
    return ReadOne.photo(jpeg).hidden().stream().map(Hidden::kind).toList();
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }
}
