package org.vestibule.jpeg;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

/**
 * Reads bits of entropy-coded data, undoing byte stuffing and stopping at restart markers (ITU-T
 * T.81 B.1.1.5, F.2.2.5).
 *
 * <p>Past the end of an interval it supplies zeros and counts them, so that whoever uses one can be
 * told by {@link #overrun}.
 */
final class BitReader {

  private static final VarHandle WORD =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.BIG_ENDIAN);

  /** More bits than a code and its value take. */
  static final int CODE_AND_VALUE = 32;

  private static final long ONES = 0x0101010101010101L;
  private static final long TOPS = 0x8080808080808080L;

  private final byte[] bytes;
  private final int end;
  int at;

  /** Unread bits, the next one on top. */
  long bits;

  int count;

  /** How many of the unread bits were made up. */
  private int madeUp;

  BitReader(byte[] bytes, int from, int end) {
    this.bytes = bytes;
    this.at = from;
    this.end = end;
  }

  /** The next 16 bits without reading them; at least 32 bits can then be read. */
  int peek16() {
    if (count < CODE_AND_VALUE) {
      fill();
    }
    return (int) (bits >>> 48);
  }

  void skip(int length) {
    bits <<= length;
    count -= length;
  }

  /** The next bits as a number, 1 to 16 of them. */
  int bits(int length) {
    if (count < length) {
      fill();
    }
    int value = (int) (bits >>> (64 - length));
    bits <<= length;
    count -= length;
    return value;
  }

  /** A signed value of 1 to 15 bits (T.81 F.2.2.1 EXTEND). */
  int extended(int length) {
    int value = bits(length);
    return value < 1 << (length - 1) ? value - (1 << length) + 1 : value;
  }

  /** True if more bits were read than the interval has. */
  boolean overrun() {
    return count < madeUp;
  }

  /** Offset of the next byte that has not been looked at, for messages. */
  int position() {
    return at;
  }

  /** True if a restart marker comes next, with no more than a byte's padding left over. */
  boolean atRestart() {
    int next = afterFill();
    return next > at
        && next < end
        && Markers.isRestart(Bytes.u8(bytes, next))
        && count - madeUp < 8;
  }

  /** True if the scan ends here, with no more than a byte's padding left over. */
  boolean atEnd() {
    return afterFill() == end && count - madeUp < 8;
  }

  private int afterFill() {
    int next = at;
    while (next < end && bytes[next] == (byte) 0xFF) {
      next++;
    }
    return next;
  }

  /**
   * Goes on after the next restart marker.
   *
   * @return the marker's number 0 to 7, or -1 if there is none
   */
  int restart() {
    for (int i = at; i < end - 1; i++) {
      if (bytes[i] == (byte) 0xFF && Markers.isRestart(Bytes.u8(bytes, i + 1))) {
        at = i + 2;
        bits = 0;
        count = 0;
        madeUp = 0;
        return Bytes.u8(bytes, i + 1) - Markers.RST0;
      }
    }
    return -1;
  }

  /** Reads on until no further byte fits; 56 to 63 bits can then be read. */
  void fill() {
    long eight = plainEight();
    if (eight == 0) {
      byByte();
      return;
    }
    // As many bytes as fit are taken at once. What stands below them is of the byte that comes
    // next, and will be the same when that is taken.
    bits |= eight >>> count;
    at += (63 - count) >>> 3;
    count |= 56;
  }

  /** The next eight bytes if they are bits and nothing else, none of them FF; else 0. */
  long plainEight() {
    if (at > end - 8) {
      return 0;
    }
    long word = (long) WORD.get(bytes, at);
    return ((~word - ONES) & word & TOPS) == 0 ? word : 0;
  }

  /** The same as {@link #fill}, a byte at a time. */
  void byByte() {
    bits &= ~(-1L >>> count);
    while (count < 56) {
      int value = 0;
      if (at < end && bytes[at] != (byte) 0xFF) {
        value = bytes[at++] & 0xFF;
      } else if (at + 1 < end && bytes[at + 1] == 0) {
        value = 0xFF;
        at += 2;
      } else {
        madeUp += 8;
      }
      bits |= (long) value << (56 - count);
      count += 8;
    }
  }
}
