package org.vestibule.samples;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;
import org.jspecify.annotations.Nullable;

/** The pieces of a telephone's file other than its directories and its picture. */
final class PhoneSegments {

  private PhoneSegments() {}

  /** Degrees, minutes and hundredths of a second, as numerators and denominators. */
  static int[] degrees(double value) {
    long hundredths = Math.round(Math.abs(value) * 360_000);
    return new int[] {
      (int) (hundredths / 360_000), 1,
      (int) (hundredths / 6_000 % 60), 1,
      (int) (hundredths % 6_000), 100
    };
  }

  /** The index of two pictures (CIPA DC-007, from memory), offsets from its own header. */
  static byte[] multiPicture(int firstSize, int secondOffset, int secondSize) {
    ByteBuffer entries = ByteBuffer.allocate(32);
    entries.putInt(0x00030000).putInt(firstSize).putInt(0).putInt(0);
    entries.putInt(0).putInt(secondSize).putInt(secondOffset).putInt(0);
    return new TiffBlock()
        .undefined(0xb000, "0100".getBytes(StandardCharsets.US_ASCII))
        .longs(0xb001, 2)
        .undefined(0xb002, entries.array())
        .file(null);
  }

  static byte[] video(int contentBytes) {
    byte[] noise = new byte[contentBytes];
    new Random(contentBytes).nextBytes(noise);
    ByteBuffer out = ByteBuffer.allocate(24 + 8 + contentBytes);
    out.putInt(24).put("ftypmp42".getBytes(StandardCharsets.US_ASCII)).putInt(0);
    out.put("mp42isom".getBytes(StandardCharsets.US_ASCII));
    out.putInt(8 + contentBytes).put("mdat".getBytes(StandardCharsets.US_ASCII)).put(noise);
    return out.array();
  }

  static void segment(
      ByteArrayOutputStream out, int marker, @Nullable String name, byte[] content) {
    byte[] prefix = name == null ? new byte[0] : (name + "\0").getBytes(StandardCharsets.US_ASCII);
    int length = 2 + prefix.length + content.length;
    if (length > 0xffff) {
      throw new IllegalArgumentException(
          "a JPEG segment holds 65535 bytes at most but " + length + " were given");
    }
    out.write(0xff);
    out.write(marker);
    out.write(length >> 8);
    out.write(length & 0xff);
    out.writeBytes(prefix);
    out.writeBytes(content);
  }

  static byte[] join(byte[] first, byte[] second) {
    byte[] both = Arrays.copyOf(first, first.length + second.length);
    System.arraycopy(second, 0, both, first.length, second.length);
    return both;
  }
}
