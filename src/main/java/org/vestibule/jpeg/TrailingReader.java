package org.vestibule.jpeg;

import java.util.ArrayList;
import java.util.List;

/**
 * Says what stands after the first picture: further pictures, a video (ISO base media boxes,
 * ISO/IEC 14496-12; from memory), padding or other data.
 */
final class TrailingReader {

  private static final int MOST_PARTS = 1000;

  private final byte[] bytes;
  private final List<Trailing> parts = new ArrayList<>();

  private TrailingReader(byte[] bytes) {
    this.bytes = bytes;
  }

  static List<Trailing> read(byte[] bytes, int from) {
    TrailingReader reader = new TrailingReader(bytes);
    int at = from;
    while (at < bytes.length && reader.parts.size() < MOST_PARTS) {
      at = reader.part(at);
    }
    if (at < bytes.length) {
      reader.add(Trailing.Kind.OTHER, at, bytes.length);
    }
    return reader.parts;
  }

  private int part(int at) {
    if (isVideo(at)) {
      return add(Trailing.Kind.VIDEO, at, videoEnd(at));
    }
    if (isPicture(at)) {
      return add(Trailing.Kind.JPEG_PICTURE, at, SegmentWalker.walk(bytes, at).end());
    }
    int end = at;
    if (bytes[at] == 0) {
      while (end < bytes.length && bytes[end] == 0 && !isVideo(end)) {
        end++;
      }
      return add(Trailing.Kind.ZEROS, at, end);
    }
    while (end < bytes.length && !isVideo(end) && !isPicture(end)) {
      end++;
    }
    return add(Trailing.Kind.OTHER, at, end);
  }

  private int add(Trailing.Kind kind, int from, int end) {
    parts.add(new Trailing(kind, from, end - (long) from));
    return end;
  }

  private boolean isPicture(int at) {
    return at + 4 <= bytes.length
        && bytes[at] == (byte) 0xFF
        && bytes[at + 1] == (byte) Markers.SOI
        && bytes[at + 2] == (byte) 0xFF
        && Bytes.u8(bytes, at + 3) >= Markers.SOF0;
  }

  private boolean isVideo(int at) {
    return at + 8 <= bytes.length
        && bytes[at + 4] == 'f'
        && bytes[at] == 0
        && Bytes.startsWith(bytes, at + 4, bytes.length, "ftyp");
  }

  /** Follows the chain of boxes; a box whose length runs out of the file ends it there. */
  private int videoEnd(int from) {
    long at = from;
    while (at + 8 <= bytes.length && isBoxType((int) at + 4)) {
      long length = Bytes.u32(bytes, (int) at);
      if (length == 1 && at + 16 <= bytes.length) {
        length = Bytes.u32(bytes, (int) at + 8) << 32 | Bytes.u32(bytes, (int) at + 12);
      }
      if (length < 8 || length > bytes.length - at) {
        return bytes.length;
      }
      at += length;
    }
    return (int) at;
  }

  private boolean isBoxType(int at) {
    for (int i = 0; i < 4; i++) {
      int letter = Bytes.u8(bytes, at + i);
      if (letter < ' ' || letter > '~') {
        return false;
      }
    }
    return true;
  }
}
