package org.vestibule.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Part10Writer;
import org.vestibule.dicom.Tags;
import org.vestibule.dicom.TransferSyntax;

/** What the picture inside an object must be, and must not carry (PS3.5 8.2.1, A.4). */
class PictureTest {

  private static final byte[] JPEG = SamplePhotograph.jpeg();

  @Test
  void metadataLeftInThePictureIsAnError() {
    assertThat(words(inserted(0xE1, "Exif\0\0"))).contains("still carries APP1 at byte 2");
    assertThat(words(inserted(0xE0, "JFIF\0\1\1\0\0\1\0\1\0\0"))).contains("still carries APP0");
    assertThat(words(inserted(0xEE, "Adobe\0d\0\0\0\0\1"))).contains("still carries APP14");
    assertThat(words(inserted(0xFE, "a comment"))).contains("still carries COM");
  }

  @Test
  void whatFollowsThePictureIsAnError() {
    byte[] two = Arrays.copyOf(JPEG, JPEG.length * 2);
    System.arraycopy(JPEG, 0, two, JPEG.length, JPEG.length);
    assertThat(words(two)).contains("bytes after the picture's end");
    assertThat(words(Arrays.copyOf(JPEG, JPEG.length + 4)))
        .contains("bytes after the picture's end");
    assertThat(words(Arrays.copyOf(JPEG, JPEG.length - 2))).contains("without an end");
    assertThat(words(new byte[] {1, 2, 3, 4})).contains("is not a readable JPEG");
  }

  @Test
  void anotherProcessIsAnError() {
    byte[] extended = JPEG.clone();
    extended[frameHeader() + 1] = (byte) 0xC1;
    assertThat(words(extended)).contains("this transfer syntax holds 8-bit baseline");
  }

  @Test
  void fragmentsAndOffsetTable() {
    byte[] first = Arrays.copyOf(JPEG, 100);
    byte[] rest = Arrays.copyOfRange(JPEG, 100, JPEG.length);
    DataSet cut = SamplePhotograph.data().putFragments(Tags.PixelData, first, rest);
    assertThat(report(cut).words())
        .isEqualTo(
            "x: conformant, with remarks (0 errors, 1 warning)\n"
                + "  warning: PixelData (7FE0,0010) is cut into 2 fragments; one per photograph is"
                + " safest [PS3.5 A.4]\n");
  }

  @Test
  void plainPixelsMustHaveTheirLength() {
    DataSet plain = SamplePhotograph.data().put(Tags.PixelData, new byte[10]);
    byte[] file = Part10Writer.write(plain, TransferSyntax.EXPLICIT_LITTLE_ENDIAN).orThrow();
    assertThat(CheckReport.of("x", file).words())
        .contains("PixelData (7FE0,0010) is 10 bytes long instead of 9216 [PS3.5 8.1.1]");
    byte[] wrong = Part10Writer.write(plain, TransferSyntax.JPEG_BASELINE).orThrow();
    assertThat(CheckReport.of("x", wrong).words()).contains("must be encapsulated");
  }

  @Test
  void aProfileOfAnotherKindIsAnError() {
    byte[] profile = SamplePhotograph.data().bytes(Tags.ICCProfile);
    assertThat(profiled(new byte[10])).contains("is not an ICC profile");
    assertThat(profiled(Arrays.copyOf(profile, profile.length - 8)))
        .contains("bytes long but says");
    byte[] printer = profile.clone();
    System.arraycopy(new byte[] {'p', 'r', 't', 'r'}, 0, printer, 12, 4);
    assertThat(profiled(printer)).contains("is not a profile of an input");
    byte[] cmyk = profile.clone();
    System.arraycopy(new byte[] {'C', 'M', 'Y', 'K'}, 0, cmyk, 16, 4);
    assertThat(profiled(cmyk)).contains("is for another colour space");
  }

  @Test
  void aFileThatIsNoneIsAFinding() {
    assertThat(PhotographicChecker.check(new byte[3]))
        .containsExactly(
            new Finding(
                Severity.ERROR,
                "file",
                0,
                "not a DICOM file: DICM is missing at byte 128: give a file with preamble and file"
                    + " meta information (PS3.10)",
                "PS3.10 7.1"));
  }

  @Test
  void theHeaderMustAgreeAndHideNothing() {
    byte[] file = SamplePhotograph.file();
    file[0] = 'I';
    assertThat(CheckReport.of("x", file).words()).contains("has a preamble that is not all zero");
    DataSet other = SamplePhotograph.data().put(Tags.SOPInstanceUID, "2.25.314159265358970");
    byte[] theirs = SamplePhotograph.file(other);
    System.arraycopy(theirs, 0, file, 0, 300);
    assertThat(CheckReport.of("x", file).words())
        .contains("differs from the data set's SOPInstanceUID");
  }

  private static String profiled(byte[] profile) {
    return report(SamplePhotograph.data().put(Tags.ICCProfile, profile)).words();
  }

  private static String words(byte[] jpeg) {
    return report(SamplePhotograph.data().putFragments(Tags.PixelData, jpeg)).words();
  }

  private static CheckReport report(DataSet data) {
    return CheckReport.of("x", SamplePhotograph.file(data));
  }

  private static byte[] inserted(int marker, String content) {
    byte[] bytes = content.getBytes(StandardCharsets.ISO_8859_1);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(JPEG, 0, 2);
    out.writeBytes(new byte[] {(byte) 0xFF, (byte) marker, 0, (byte) (bytes.length + 2)});
    out.writeBytes(bytes);
    out.write(JPEG, 2, JPEG.length - 2);
    return out.toByteArray();
  }

  private static int frameHeader() {
    for (int i = 0; i < JPEG.length - 1; i++) {
      if (JPEG[i] == (byte) 0xFF && JPEG[i + 1] == (byte) 0xC0) {
        return i;
      }
    }
    throw new AssertionError("no SOF0 in " + List.of(JPEG.length) + " bytes");
  }
}
