package org.vestibule.intake;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Finds the Exif item of a HEIF file: the item of type Exif in iinf, its place in iloc (ISO/IEC
 * 14496-12 8.11, ISO/IEC 23008-12 Annex A; from memory). All numbers are big endian; every length
 * is checked against the file before it is used.
 */
final class HeifExif {

  private static final int MOST_BOXES = 10_000;

  private final byte[] bytes;

  private HeifExif(byte[] bytes) {
    this.bytes = bytes;
  }

  /** A box's contents: from after its header to its end. */
  private record Box(int start, int end) {}

  /** The TIFF stream, or nothing if the file has none or is damaged. */
  static Optional<byte[]> find(byte[] bytes) {
    try {
      return Optional.ofNullable(new HeifExif(bytes).find());
    } catch (IndexOutOfBoundsException | ArithmeticException e) {
      return Optional.empty();
    }
  }

  private byte @Nullable [] find() {
    Box meta = box(0, bytes.length, "meta");
    if (meta == null) {
      return null;
    }
    Box info = box(meta.start() + 4, meta.end(), "iinf");
    Box places = box(meta.start() + 4, meta.end(), "iloc");
    long item = info == null ? -1 : exifItem(info);
    if (item < 0 || places == null) {
      return null;
    }
    int[] place = place(places, item);
    if (place == null || place[1] < 4) {
      return null;
    }
    long tiff = place[0] + 4L + u32(place[0]);
    int end = Math.addExact(place[0], place[1]);
    return tiff >= end ? null : Arrays.copyOfRange(bytes, Math.toIntExact(tiff), end);
  }

  private @Nullable Box box(int from, int end, String type) {
    int at = from;
    for (int i = 0; i < MOST_BOXES && at <= end - 8; i++) {
      long length = u32(at);
      int header = 8;
      if (length == 1) {
        length = u64(at + 8);
        header = 16;
      } else if (length == 0) {
        length = end - (long) at;
      }
      if (length < header || length > end - (long) at) {
        return null;
      }
      int next = Math.toIntExact(at + length);
      if (is(at + 4, type)) {
        return new Box(at + header, next);
      }
      at = next;
    }
    return null;
  }

  /** The id of the item whose type is Exif, or -1. */
  private long exifItem(Box info) {
    int version = u8(info.start());
    int at = info.start() + 4 + (version == 0 ? 2 : 4);
    for (int i = 0; i < MOST_BOXES; i++) {
      Box entry = box(at, info.end(), "infe");
      if (entry == null) {
        return -1;
      }
      int entryVersion = u8(entry.start());
      int idBytes = entryVersion == 3 ? 4 : 2;
      if (entryVersion >= 2 && is(entry.start() + 4 + idBytes + 2, "Exif")) {
        return number(entry.start() + 4, idBytes);
      }
      at = entry.end();
    }
    return -1;
  }

  /** Offset and length of an item that is one stretch of the file itself, or null. */
  private int @Nullable [] place(Box box, long wanted) {
    int version = u8(box.start());
    int at = box.start() + 4;
    int offsetBytes = u8(at) >> 4;
    int lengthBytes = u8(at) & 15;
    int baseBytes = u8(at + 1) >> 4;
    int indexBytes = version == 0 ? 0 : u8(at + 1) & 15;
    int idBytes = version < 2 ? 2 : 4;
    long count = number(at + 2, idBytes);
    at += 2 + idBytes;
    for (long i = 0; i < count && at < box.end(); i++) {
      long id = number(at, idBytes);
      at += idBytes;
      long method = version == 0 ? 0 : number(at, 2) & 15;
      at += (version == 0 ? 0 : 2) + 2;
      long base = number(at, baseBytes);
      long extents = number(at + baseBytes, 2);
      at += baseBytes + 2;
      if (id == wanted && method == 0 && extents == 1) {
        long offset = base + number(at + indexBytes, offsetBytes);
        long length = number(at + indexBytes + offsetBytes, lengthBytes);
        return new int[] {Math.toIntExact(offset), Math.toIntExact(length)};
      }
      at = Math.toIntExact(at + extents * (indexBytes + offsetBytes + lengthBytes));
    }
    return null;
  }

  private boolean is(int at, String type) {
    return type.equals(new String(bytes, at, 4, StandardCharsets.ISO_8859_1));
  }

  private long number(int at, int length) {
    return switch (length) {
      case 0 -> 0;
      case 2 -> u8(at) << 8 | u8(at + 1);
      case 4 -> u32(at);
      case 8 -> u64(at);
      default -> throw new ArithmeticException("a number of " + length + " bytes");
    };
  }

  private int u8(int at) {
    return bytes[at] & 0xFF;
  }

  private long u32(int at) {
    return (long) u8(at) << 24 | u8(at + 1) << 16 | u8(at + 2) << 8 | u8(at + 3);
  }

  private long u64(int at) {
    long value = u32(at) << 32 | u32(at + 4);
    if (value < 0) {
      throw new ArithmeticException("a length beyond 2^63");
    }
    return value;
  }
}
