package org.vestibule.jpeg;

import java.util.Set;

/**
 * Looks into an Exif segment just far enough to say what hides there: a thumbnail, a position, a
 * maker note (CIPA DC-008 and TIFF 6.0; tags from memory). Reading the values is another room's
 * work.
 */
final class ExifPeek {

  private static final int EXIF_IFD = 0x8769;
  private static final int GPS_IFD = 0x8825;
  private static final int MAKER_NOTE = 0x927C;
  private static final int THUMBNAIL_OFFSET = 0x0201;
  private static final int STRIP_OFFSETS = 0x0111;
  private static final int ENTRY_BYTES = 12;

  private final byte[] bytes;
  private final int base;
  private final int end;
  private final boolean littleEndian;

  private ExifPeek(byte[] bytes, int base, int end) {
    this.bytes = bytes;
    this.base = base;
    this.end = end;
    this.littleEndian = bytes[base] == 'I';
  }

  /** Adds what was found between the TIFF header at {@code base} and {@code end}. */
  static void look(byte[] bytes, int base, int end, Set<Embedded> found) {
    if (end - base < 8) {
      return;
    }
    ExifPeek peek = new ExifPeek(bytes, base, end);
    long first = peek.u32(base + 4);
    if (peek.entry(first, GPS_IFD) >= 0) {
      found.add(Embedded.GPS);
    }
    int exif = peek.entry(first, EXIF_IFD);
    if (exif >= 0 && peek.entry(peek.u32(exif + 8), MAKER_NOTE) >= 0) {
      found.add(Embedded.MAKER_NOTE);
    }
    long second = peek.next(first);
    if (second > 0
        && (peek.entry(second, THUMBNAIL_OFFSET) >= 0 || peek.entry(second, STRIP_OFFSETS) >= 0)) {
      found.add(Embedded.EXIF_THUMBNAIL);
    }
  }

  /** Where the directory's entry for a tag stands in the array, or -1. */
  private int entry(long directory, int tag) {
    int start = within(directory, 2);
    if (start < 0) {
      return -1;
    }
    int count = u16(start);
    for (int i = 0; i < count; i++) {
      int at = within(directory + 2 + (long) ENTRY_BYTES * i, ENTRY_BYTES);
      if (at < 0) {
        return -1;
      }
      if (u16(at) == tag) {
        return at;
      }
    }
    return -1;
  }

  private long next(long directory) {
    int start = within(directory, 2);
    int link = start < 0 ? -1 : within(directory + 2 + (long) ENTRY_BYTES * u16(start), 4);
    return link < 0 ? 0 : u32(link);
  }

  private int within(long offset, int length) {
    return offset < 0 || offset > end - base - (long) length ? -1 : base + (int) offset;
  }

  private int u16(int at) {
    int value = Bytes.u16(bytes, at);
    return littleEndian ? (value & 0xFF) << 8 | value >> 8 : value;
  }

  private long u32(int at) {
    return littleEndian ? (long) u16(at + 2) << 16 | u16(at) : Bytes.u32(bytes, at);
  }
}
