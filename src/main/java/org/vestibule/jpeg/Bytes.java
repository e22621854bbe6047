package org.vestibule.jpeg;

import java.nio.charset.StandardCharsets;

/** Reads numbers and signatures from a byte array whose bounds the caller has checked. */
final class Bytes {

  private Bytes() {}

  static int u8(byte[] bytes, int at) {
    return bytes[at] & 0xFF;
  }

  /** Two bytes, most significant first. */
  static int u16(byte[] bytes, int at) {
    return (bytes[at] & 0xFF) << 8 | (bytes[at + 1] & 0xFF);
  }

  /** Four bytes, most significant first. */
  static long u32(byte[] bytes, int at) {
    return (long) u16(bytes, at) << 16 | u16(bytes, at + 2);
  }

  /** True if the Latin-1 text stands at this offset and ends before {@code end}. */
  static boolean startsWith(byte[] bytes, int at, int end, String text) {
    byte[] wanted = text.getBytes(StandardCharsets.ISO_8859_1);
    if (at < 0 || end > bytes.length || end - at < wanted.length) {
      return false;
    }
    for (int i = 0; i < wanted.length; i++) {
      if (bytes[at + i] != wanted[i]) {
        return false;
      }
    }
    return true;
  }

  /** The first place in the range where the Latin-1 text stands, or -1. */
  static int indexOf(byte[] bytes, int from, int end, String text) {
    byte first = (byte) text.charAt(0);
    for (int at = from; at <= end - text.length(); at++) {
      if (bytes[at] == first && startsWith(bytes, at, end, text)) {
        return at;
      }
    }
    return -1;
  }
}
