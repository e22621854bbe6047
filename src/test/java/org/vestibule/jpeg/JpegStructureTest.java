package org.vestibule.jpeg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.vestibule.jpeg.Assembled.box;
import static org.vestibule.jpeg.Assembled.bytes;
import static org.vestibule.jpeg.Assembled.entry;
import static org.vestibule.jpeg.Assembled.join;
import static org.vestibule.jpeg.Assembled.latin;
import static org.vestibule.jpeg.Assembled.segment;
import static org.vestibule.jpeg.Assembled.withComponentIds;
import static org.vestibule.jpeg.Assembled.withSegments;
import static org.vestibule.jpeg.Assembled.withoutJfif;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.base.Outcome;

/** Checks the structure reader on files put together here (ITU-T T.81 Annex B). */
final class JpegStructureTest {

  private final byte[] plain = Assembled.plain(40, 24);

  @Test
  void readsAPlainPicture() {
    JpegStructure structure = JpegStructure.read(plain).orThrow();

    assertThat(structure.frame().size()).isEqualTo(new FrameSize(40, 24));
    assertThat(structure.frame().process()).isEqualTo(CodingProcess.BASELINE);
    assertThat(structure.frame().precisionBits()).isEqualTo(8);
    assertThat(structure.colourModel()).isEqualTo(ColourModel.YCBCR);
    assertThat(structure.embedded()).containsExactly(Embedded.JFIF);
    assertThat(structure.pictureEndBytes()).isEqualTo(plain.length);
    assertThat(structure.endMarkerMissing()).isFalse();
    assertThat(structure.trailing()).isEmpty();
    assertThat(structure.warnings()).isEmpty();
    assertThat(structure.scans()).isEqualTo(1);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "'' | the file is empty (0 bytes)",
        "89504E470D0A | the file starts with 89 50, a JPEG starts with FF D8",
        "FF | the file starts with FF, a JPEG starts with FF D8",
        "FFD8 | no frame header (SOF) was found, so the picture has no size",
        "FFD8FFE0 | the file ends at byte 4, before its length of the APP0 segment at byte 2 are"
            + " complete",
        "FFD8FFE00010 | the file ends at byte 6, before its 16 bytes of the APP0 segment at byte 2"
            + " are complete",
        "FFD8FFFE0001 | the COM segment at byte 2 says it is 1 bytes long, at least 2 were expected",
        "FFD8FFC0000B080008000800011100 | SOF0 at byte 2 has 9 bytes of data for 0 components; 6"
            + " and 3 for each of at least one component were expected",
        "FFD8FFC0000B0800080008010111 | the file ends at byte 14, before its 11 bytes of the SOF0"
            + " segment at byte 2 are complete",
        "FFD8FFC0000B08000800080101110000 | the file ends before the picture's data (no SOS"
            + " segment)",
        "FFD8FFC0000B08000800000101110000 | SOF0 at byte 2 says the picture is 0 samples wide",
        "FFD8FFC0000B08000000080101110000 | SOF0 at byte 2 says the picture is 0 samples high and no"
            + " DNL segment gives the height",
        "FFD8FFC0000B08000800080101510000 | SOF0 at byte 2 gives component 1 the sampling 5x1 and"
            + " quantisation table 0; factors 1 to 4 and tables 0 to 3 were expected",
        "FFD8FFC0000B08000800080301110000 | SOF0 at byte 2 has 9 bytes of data for 3 components; 6"
            + " and 3 for each of at least one component were expected"
      })
  void refusesWithTheReason(String hex, String reason) {
    byte[] file = java.util.HexFormat.of().parseHex(hex);

    Outcome<JpegStructure> outcome = JpegStructure.read(file);

    assertThat(outcome).isInstanceOf(Outcome.Refused.class);
    assertThat(((Outcome.Refused<JpegStructure>) outcome).reason()).isEqualTo(reason);
  }

  @Test
  void saysThatTheEndMarkerIsMissing() {
    JpegStructure structure = JpegStructure.read(Arrays.copyOf(plain, plain.length - 2)).orThrow();

    assertThat(structure.endMarkerMissing()).isTrue();
    assertThat(structure.pictureEndBytes()).isEqualTo(plain.length - 2L);
    assertThat(structure.warnings()).containsExactly("the file ends without an end marker (EOI)");
  }

  @Test
  void findsTheEndOfTheFirstPictureAndWhatFollows() {
    byte[] video = join(box("ftyp", latin("mp42")), box("mdat", new byte[50]));
    byte[] file = join(plain, new byte[10], plain, video, latin("tail"));

    JpegStructure structure = JpegStructure.read(file).orThrow();

    long end = plain.length;
    assertThat(structure.pictureEndBytes()).isEqualTo(end);
    assertThat(structure.trailing())
        .containsExactly(
            new Trailing(Trailing.Kind.ZEROS, end, 10),
            new Trailing(Trailing.Kind.JPEG_PICTURE, end + 10, end),
            new Trailing(Trailing.Kind.VIDEO, 2 * end + 10, video.length),
            new Trailing(Trailing.Kind.OTHER, 2 * end + 10 + video.length, 4));
  }

  @Test
  void isNotDeceivedByAThumbnailsEnd() {
    byte[] thumbnail = Assembled.plain(8, 8);
    byte[] directory =
        join(
            latin("MM"),
            bytes(0, 42, 0, 0, 0, 8),
            bytes(0, 2),
            entry(0x8769, 38),
            entry(0x8825, 38),
            bytes(0, 0, 0, 56),
            bytes(0, 1),
            entry(0x927C, 0),
            bytes(0, 0, 0, 0),
            bytes(0, 2),
            entry(0x0201, 86),
            entry(0x0202, thumbnail.length),
            bytes(0, 0, 0, 0));
    byte[] file = withSegments(plain, segment(0xE1, join(latin("Exif\0\0"), directory, thumbnail)));

    JpegStructure structure = JpegStructure.read(file).orThrow();

    assertThat(structure.frame().size()).isEqualTo(new FrameSize(40, 24));
    assertThat(structure.pictureEndBytes()).isEqualTo(file.length);
    assertThat(structure.embedded())
        .containsExactlyInAnyOrder(
            Embedded.JFIF,
            Embedded.EXIF,
            Embedded.EXIF_THUMBNAIL,
            Embedded.GPS,
            Embedded.MAKER_NOTE);
  }

  @Test
  void namesWhatSegmentsCarry() {
    byte[] iptc = join(latin("Photoshop 3.0\0"), latin("8BIM"), bytes(4, 4, 0, 0, 0, 0, 0, 0));
    byte[] thumbnail = join(latin("8BIM"), bytes(4, 12, 0, 0, 0, 0, 0, 0));
    byte[] file =
        withSegments(
            plain,
            segment(0xFE, latin("hello")),
            segment(0xED, join(iptc, thumbnail)),
            segment(0xE1, latin("http://ns.adobe.com/xap/1.0/\0<x hdr-gain-map=''/>")),
            segment(0xE1, latin("http://ns.adobe.com/xmp/extension/\0")),
            segment(0xE2, latin("MPF\0")),
            segment(0xE0, latin("JFXX\0")),
            segment(0xE5, latin("?")),
            segment(0xEE, join(latin("Adobe"), bytes(0, 100, 0, 0, 0, 0, 1))));

    JpegStructure structure = JpegStructure.read(file).orThrow();

    assertThat(structure.embedded())
        .containsExactlyInAnyOrder(
            Embedded.JFIF,
            Embedded.JFIF_THUMBNAIL,
            Embedded.COMMENT,
            Embedded.PHOTOSHOP,
            Embedded.PHOTOSHOP_THUMBNAIL,
            Embedded.IPTC,
            Embedded.XMP,
            Embedded.EXTENDED_XMP,
            Embedded.GAIN_MAP,
            Embedded.MULTI_PICTURE,
            Embedded.OTHER_APPLICATION_DATA,
            Embedded.ADOBE);
    assertThat(structure.adobeTransform()).isEqualTo(1);
  }

  @Test
  void putsAProfileTogetherInTheOrderOfItsNumbers() {
    byte[] profile = profile(300);
    byte[] file = withSegments(plain, chunk(profile, 200, 300, 2, 2), chunk(profile, 0, 200, 1, 2));

    JpegStructure structure = JpegStructure.read(file).orThrow();

    assertThat(structure.iccProfile()).isNotNull();
    assertThat(structure.iccProfile().bytes()).isEqualTo(profile);
    assertThat(structure.warnings()).isEmpty();
  }

  @Test
  void leavesOutAProfileThatIsNotWhole() {
    byte[] profile = profile(300);

    assertThat(profileTrouble(chunk(profile, 0, 200, 1, 2)))
        .isEqualTo("the colour profile is left out: it has 1 of 2 chunks");
    assertThat(profileTrouble(chunk(profile, 0, 300, 1, 1), chunk(profile, 0, 300, 1, 1)))
        .isEqualTo("the colour profile is left out: chunk 1 comes twice");
    assertThat(profileTrouble(chunk(profile, 0, 200, 1, 1)))
        .isEqualTo("the colour profile is left out: it says it has 300 bytes but 200 are there");
    assertThat(profileTrouble(chunk(profile, 0, 300, 2, 1)))
        .isEqualTo("the colour profile is left out: a chunk says it is number 2 of 1");
    assertThat(profileTrouble(chunk(new byte[300], 0, 300, 1, 1)))
        .isEqualTo(
            "the colour profile is left out: its 300 bytes are no ICC profile (no 'acsp' at byte"
                + " 36)");
  }

  @Test
  void stepsOverStrayAndFillBytes() {
    byte[] file =
        join(
            bytes(0xFF, 0xD8, 0xFF, 0xFF),
            segment(0xFE, latin("x")),
            bytes(1, 2, 3),
            Arrays.copyOfRange(plain, 2, plain.length));

    JpegStructure structure = JpegStructure.read(file).orThrow();

    assertThat(structure.warnings()).containsExactly("3 stray bytes between segments at byte 9");
    assertThat(structure.pictureEndBytes()).isEqualTo(file.length);
  }

  @Test
  void tellsColoursByMarkersAndIds() {
    byte[] bare = withoutJfif(plain);
    byte[] adobe = join(latin("Adobe"), bytes(0, 100, 0, 0, 0, 0));
    byte[] adobeRgb = segment(0xEE, join(adobe, bytes(0)));

    assertThat(colours(bare)).isEqualTo(ColourModel.YCBCR);
    assertThat(colours(withComponentIds(bare, 'R', 'G', 'B'))).isEqualTo(ColourModel.RGB);
    assertThat(colours(withComponentIds(bare, 9, 8, 7))).isEqualTo(ColourModel.YCBCR);
    assertThat(colours(withComponentIds(plain, 'R', 'G', 'B'))).isEqualTo(ColourModel.YCBCR);
    assertThat(colours(withSegments(bare, adobeRgb))).isEqualTo(ColourModel.RGB);
    assertThat(colours(withSegments(plain, adobeRgb))).isEqualTo(ColourModel.YCBCR);
    assertThat(
            colours(
                withSegments(
                    withComponentIds(bare, 'R', 'G', 'B'), segment(0xEE, join(adobe, bytes(1))))))
        .isEqualTo(ColourModel.YCBCR);
  }

  private static ColourModel colours(byte[] file) {
    return JpegStructure.read(file).orThrow().colourModel();
  }

  private String profileTrouble(byte[]... chunks) {
    JpegStructure structure = JpegStructure.read(withSegments(plain, chunks)).orThrow();
    assertThat(structure.iccProfile()).isNull();
    assertThat(structure.warnings()).hasSize(1);
    return structure.warnings().get(0);
  }

  private static byte[] profile(int length) {
    byte[] profile = new byte[length];
    profile[2] = (byte) (length >> 8);
    profile[3] = (byte) length;
    System.arraycopy(latin("acsp"), 0, profile, 36, 4);
    profile[250] = 77;
    return profile;
  }

  private static byte[] chunk(byte[] profile, int from, int to, int number, int total) {
    return segment(
        0xE2,
        join(latin("ICC_PROFILE\0"), bytes(number, total), Arrays.copyOfRange(profile, from, to)));
  }
}
