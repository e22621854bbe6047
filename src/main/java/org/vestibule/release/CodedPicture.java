package org.vestibule.release;

import java.io.ByteArrayOutputStream;

/** Leaves out what a JPEG has between its scan headers: in coded picture data anything occurs. */
final class CodedPicture {

  private static final int SOS = 0xDA;
  private static final int EOI = 0xD9;

  private CodedPicture() {}

  /**
   * The bytes without coded data; all segments, and whatever stands before and behind, stay.
   *
   * @param from where SOI stands
   */
  static byte[] without(byte[] bytes, int from) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(bytes, 0, from + 2);
    int at = from + 2;
    while (at + 4 <= bytes.length && (bytes[at] & 0xFF) == 0xFF && (bytes[at + 1] & 0xFF) != EOI) {
      int length = 2 + ((bytes[at + 2] & 0xFF) << 8 | (bytes[at + 3] & 0xFF));
      int next = Math.min(at + length, bytes.length);
      out.write(bytes, at, next - at);
      at = (bytes[at + 1] & 0xFF) == SOS ? endOfScan(bytes, next) : next;
    }
    out.write(bytes, at, bytes.length - at);
    return out.toByteArray();
  }

  private static int endOfScan(byte[] bytes, int from) {
    for (int at = from; at + 1 < bytes.length; at++) {
      int following = bytes[at + 1] & 0xFF;
      boolean isRestart = following >= 0xD0 && following <= 0xD7;
      if ((bytes[at] & 0xFF) == 0xFF && following != 0 && following != 0xFF && !isRestart) {
        return at;
      }
    }
    return bytes.length;
  }
}
