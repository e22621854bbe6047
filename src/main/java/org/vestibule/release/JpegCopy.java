package org.vestibule.release;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;
import org.vestibule.base.Outcome;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;
import org.vestibule.encode.Codestream;

/**
 * The picture of a copy as a JPEG file: the same coded bytes behind the least Exif that keeps it
 * upright (Orientation 1; CIPA DC-008, from memory) and its colour profile (ICC.1 annex B.4, from
 * memory).
 */
public final class JpegCopy {

  /** "Exif", TIFF header (big endian), one entry: tag 0x0112, SHORT, one value: 1. */
  private static final byte[] EXIF =
      HexFormat.of()
          .parseHex(
              "457869660000"
                  + "4d4d002a00000008"
                  + "0001"
                  + "011200030000000100010000"
                  + "00000000");

  private static final byte[] ICC = "ICC_PROFILE\0".getBytes(StandardCharsets.US_ASCII);

  /** A segment holds 65,533 bytes: the mark, two counts, the rest of the profile. */
  private static final int CHUNK_BYTES = 65_519;

  private static final int APP1 = 0xE1;
  private static final int APP2 = 0xE2;

  private JpegCopy() {}

  /** The picture of an object. */
  public static Outcome<byte[]> of(DataSet copy) {
    return Codestream.of(copy).map(bare -> of(bare, copy));
  }

  /**
   * Another JPEG of an object's picture, such as a small one.
   *
   * @param bare begins with its SOI and holds no Exif and no profile
   */
  public static byte[] of(byte[] bare, DataSet object) {
    return wrapped(bare, profile(object));
  }

  /** Without the byte that pads the element to an even length: the profile tells its own size. */
  private static byte[] profile(DataSet copy) {
    byte[] padded = copy.bytes(Tags.ICCProfile);
    if (padded.length < 4) {
      return new byte[0];
    }
    int size = ByteBuffer.wrap(padded).getInt(0);
    return size == padded.length - 1 ? Arrays.copyOf(padded, size) : padded;
  }

  private static byte[] wrapped(byte[] bare, byte[] profile) {
    ByteArrayOutputStream out = new ByteArrayOutputStream(bare.length + profile.length + 256);
    out.write(bare, 0, 2);
    segment(out, APP1, EXIF, new byte[0], 0, 0);
    int chunks = (profile.length + CHUNK_BYTES - 1) / CHUNK_BYTES;
    for (int i = 0; i < chunks; i++) {
      byte[] head = Arrays.copyOf(ICC, ICC.length + 2);
      head[ICC.length] = (byte) (i + 1);
      head[ICC.length + 1] = (byte) chunks;
      int from = i * CHUNK_BYTES;
      segment(out, APP2, head, profile, from, Math.min(CHUNK_BYTES, profile.length - from));
    }
    out.write(bare, 2, bare.length - 2);
    return out.toByteArray();
  }

  private static void segment(
      ByteArrayOutputStream out, int marker, byte[] head, byte[] rest, int from, int length) {
    int size = 2 + head.length + length;
    out.write(0xFF);
    out.write(marker);
    out.write(size >> 8);
    out.write(size & 0xFF);
    out.writeBytes(head);
    out.write(rest, from, length);
  }
}
