package org.vestibule.dicom;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.channels.Channels;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.vestibule.base.Outcome.Done;

/** Heads laid down by hand from PS3.10 7.1 and table 7.1-1. */
class FileHeadTest {

  private static final String META =
      "0200 0100 4F42 0000 02000000 0001"
          + element(0x02, "1.2.840.10008.5.1.4.1.1.77.1.4")
          + element(0x03, "2.25.71")
          + element(0x10, "1.2.840.10008.1.2.4.50")
          + element(0x12, "1.2.3.4");

  /** A UI element of group 2, its value made even with a NUL (PS3.5 6.2). */
  private static String element(int number, String uid) {
    String even = hex(uid) + (uid.length() % 2 == 0 ? "" : "00");
    return "0200 " + little(number) + " 5549 " + little(even.length() / 2) + even;
  }

  private static String hex(String text) {
    return HexFormat.of().formatHex(text.getBytes(US_ASCII));
  }

  private static String little(int number) {
    return HexFormat.of().formatHex(new byte[] {(byte) number, (byte) (number >> 8)});
  }

  private static byte[] bytes(String hex) {
    return HexFormat.of().parseHex(hex.replace(" ", ""));
  }

  private static byte[] file(String meta, int more) {
    byte[] group = bytes(meta);
    ByteArrayOutputStream file = new ByteArrayOutputStream();
    file.writeBytes(new byte[128]);
    file.writeBytes("DICM".getBytes(US_ASCII));
    file.writeBytes(bytes("0200 0000 554C 0400 " + little(group.length) + "0000"));
    file.writeBytes(group);
    file.writeBytes(new byte[more]);
    return file.toByteArray();
  }

  private static Optional<FileHead> read(byte[] file) throws IOException {
    return FileHead.read(Channels.newChannel(new ByteArrayInputStream(file)));
  }

  @Test
  void findsTheThreeAndWhereTheDataSetBegins() throws IOException {
    byte[] file = file(META, 20);
    assertThat(read(file))
        .contains(
            new FileHead(
                "1.2.840.10008.5.1.4.1.1.77.1.4",
                "2.25.71",
                TransferSyntax.JPEG_BASELINE,
                file.length - 20));
  }

  /** Private information (0002,0102) may be longer than what is read at first. */
  @Test
  void aLongHeadIsReadToItsEnd() throws IOException {
    String own = "0200 0201 4F42 0000 D0070000" + "00".repeat(2000);
    byte[] file =
        file(
            META.replace(element(0x10, "1.2.840.10008.1.2.4.50"), own)
                + element(0x10, "1.2.840.10008.1.2.1"),
            20);
    assertThat(read(file).orElseThrow().dataStart()).isEqualTo(file.length - 20);
    assertThat(read(file).orElseThrow().transferSyntax().uid()).isEqualTo("1.2.840.10008.1.2.1");
  }

  @Test
  void whatIsNoWholeHeadIsNone() throws IOException {
    byte[] file = file(META, 20);
    int head = file.length - 20;
    for (int length = 0; length < head; length++) {
      assertThat(read(Arrays.copyOf(file, length))).as("cut at %s", length).isEmpty();
    }
    assertThat(read("x".repeat(500).getBytes(US_ASCII))).isEmpty();
    assertThat(read(file(META + "0800 0500 4353 0000", 20))).as("another group").isEmpty();
    assertThat(read(file(META.replace(element(0x03, "2.25.71"), ""), 20))).isEmpty();
    assertThat(read(file(META.replace(hex("2.25.71"), hex("2.25\\71")), 20))).isEmpty();
    assertThat(
            read(
                file(
                    META.replace(hex("1.2.840.10008.1.2.4.50"), hex("1.2.840.10008.1.2.1.99")),
                    20)))
        .as("deflated")
        .isEmpty();
  }

  /** Where the reader of whole files finds a head, this one finds the same. */
  @Test
  void agreesWithTheReaderOfWholeFilesOnSpoiltHeads() throws IOException {
    long seed = Long.getLong("vestibule.seed", 20261126L);
    System.out.println("seed " + seed);
    Random random = new Random(seed);
    byte[] file = file(META, 0);
    int both = 0;
    for (int i = 0; i < 20_000; i++) {
      byte[] spoilt = file.clone();
      spoilt[128 + random.nextInt(spoilt.length - 128)] = (byte) random.nextInt(256);
      Optional<FileHead> ours = read(spoilt);
      if (Part10Reader.read(spoilt) instanceof Done<DicomFile> whole && ours.isPresent()) {
        both++;
        DataSet meta = whole.value().meta();
        assertThat(meta.string(Tags.MediaStorageSOPInstanceUID)).contains(ours.get().sopInstance());
        assertThat(meta.string(Tags.MediaStorageSOPClassUID)).contains(ours.get().sopClass());
        assertThat(whole.value().transferSyntax()).isEqualTo(ours.get().transferSyntax());
      }
    }
    assertThat(both).isGreaterThan(1_000);
  }
}
