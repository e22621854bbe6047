package org.vestibule.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.vestibule.base.Outcome;

/** Damaged and malicious bytes are refused in words, never with an exception or a huge buffer. */
class HostileInputTest {

  private static final String ADVICE =
      "the file is damaged or was cut; get it again from where it came";

  private static byte[] file() {
    return Part10Writer.write(WriterTest.sample(), TransferSyntax.JPEG_BASELINE).orThrow();
  }

  private static byte[] bytes(int... values) {
    byte[] bytes = new byte[values.length];
    for (int i = 0; i < values.length; i++) {
      bytes[i] = (byte) values[i];
    }
    return bytes;
  }

  private static void refused(byte[] explicit, String reason) {
    assertThat(DataSetReader.read(explicit, TransferSyntax.EXPLICIT_LITTLE_ENDIAN))
        .isEqualTo(Outcome.refused("not a readable data set: " + reason, ADVICE));
  }

  @Test
  void everyCutIsRefusedOrShorter() {
    byte[] whole = file();
    DataSet data = Part10Reader.read(whole).orThrow().data();
    for (int length = 0; length < whole.length; length++) {
      Outcome<DicomFile> cut = Part10Reader.read(Arrays.copyOf(whole, length));
      if (cut instanceof Outcome.Done<DicomFile> done) {
        assertThat(done.value().data().size()).isLessThan(data.size());
      }
    }
  }

  @Test
  void anyDamageIsAnOutcome() {
    long seed = 20260305;
    Random random = new Random(seed);
    byte[] whole = file();
    int refused = 0;
    for (int round = 0; round < 5000; round++) {
      byte[] damaged = whole.clone();
      for (int i = 0; i <= random.nextInt(4); i++) {
        damaged[132 + random.nextInt(whole.length - 132)] = (byte) random.nextInt(256);
      }
      Outcome<DicomFile> outcome = Part10Reader.read(damaged);
      if (outcome instanceof Outcome.Refused<DicomFile>) {
        refused++;
      } else {
        outcome.orThrow().data().forEach(Element::strings);
      }
    }
    assertThat(refused).as("seed " + seed).isBetween(500, 4999);
  }

  @Test
  void lengthsAreCheckedBeforeAnythingIsRead() {
    refused(
        bytes(0x10, 0, 0x10, 0, 'U', 'T', 0, 0, 0xFE, 0xFF, 0xFF, 0xFF, 1, 2),
        "(0010,0010) says it is 4294967294 bytes long but only 2 are left (at byte 12)");
    refused(
        bytes(0x10, 0, 0x10, 0, 'P', 'N', 1),
        "the bytes end in the middle of an element (at byte 6)");
    refused(
        bytes(0x10, 0, 0x10, 0, 'P', 'N', 3, 0, 'A', 'B', 'C'),
        "(0010,0010) has the odd length 3 (at byte 8)");
    refused(
        bytes(0x28, 0, 0x10, 0, 'U', 'S', 3, 0, 1, 2, 3),
        "(0028,0010) is 3 bytes long, no multiple of 2 (at byte 8)");
    refused(
        bytes(0x10, 0, 0x10, 0, '?', 'N', 0, 0),
        "(0010,0010) has no known value representation (at byte 4)");
  }

  @Test
  void orderAndNestingAreHeld() {
    byte[] twice = bytes(0x10, 0, 0x10, 0, 'P', 'N', 0, 0, 0x10, 0, 0x10, 0, 'P', 'N', 0, 0);
    refused(twice, "(0010,0010) comes after (0010,0010) (at byte 12)");
    refused(
        bytes(0xFE, 0xFF, 0x0D, 0xE0, 0, 0, 0, 0),
        "(FFFE,E00D) stands outside a sequence (at byte 4)");
    refused(
        bytes(0x08, 0, 0x40, 0x11, 'S', 'Q', 0, 0, 0xFF, 0xFF, 0xFF, 0xFF),
        "a sequence has no end (at byte 12)");
    ByteArrayOutputStream deep = new ByteArrayOutputStream();
    for (int i = 0; i < 100; i++) {
      deep.writeBytes(bytes(0x08, 0, 0x40, 0x11, 'S', 'Q', 0, 0, 0xFF, 0xFF, 0xFF, 0xFF));
      deep.writeBytes(bytes(0xFE, 0xFF, 0x00, 0xE0, 0xFF, 0xFF, 0xFF, 0xFF));
    }
    refused(deep.toByteArray(), "sequences are nested more than 32 deep (at byte 660)");
  }

  @Test
  void otherKindsOfFileAreRefusedByName() {
    assertThat(Part10Reader.read(new byte[10]))
        .isEqualTo(
            Outcome.refused(
                "not a DICOM file: DICM is missing at byte 128",
                "give a file with preamble and file meta information (PS3.10)"));
    assertThat(Part10Reader.read(withSyntax("1.2.840.10008.1.2.1.99")))
        .isEqualTo(
            Outcome.refused(
                "the data set is deflated (transfer syntax 1.2.840.10008.1.2.1.99)",
                "have it written again as explicit VR little endian"));
    assertThat(Part10Reader.read(withSyntax("1.2.840.10008.1.2.2")))
        .isEqualTo(
            Outcome.refused(
                "the data set is big endian (transfer syntax 1.2.840.10008.1.2.2, retired)",
                "have it written again as explicit VR little endian"));
    assertThat(Part10Reader.read(withSyntax("1.2.3")))
        .isEqualTo(
            Outcome.refused(
                "the transfer syntax is not one that is read here",
                "have the file written again as explicit VR little endian"));
  }

  private static byte[] withSyntax(String uid) {
    DataSet data = WriterTest.sample().remove(Tags.PixelData);
    return Part10Writer.write(data, new TransferSyntax(uid)).orThrow();
  }
}
