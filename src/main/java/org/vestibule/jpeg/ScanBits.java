package org.vestibule.jpeg;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.util.Arrays;

/**
 * The bits of one scan, a window of them at a time with byte stuffing already undone (ITU-T T.81
 * B.1.1.5, F.1.2.3), so that any bit can be reached by one unaligned read of 64.
 *
 * <p>A window never crosses a restart marker. It ends in zeros enough for one block, so that blocks
 * need no check while they are read; {@link #ready} before each and {@link #requireEnd} after the
 * last find out if they read what was not there.
 */
final class ScanBits {

  /** 64 bits, the first on top, from any byte of the window. */
  static final VarHandle WORD =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.BIG_ENDIAN);

  /** More bytes than a block can take: a DC code and 63 AC codes of 31 bits each, and a word. */
  private static final int SLACK = 264;

  private static final int WINDOW = 1 << 15;
  private static final long ONES = 0x0101010101010101L;
  private static final long TOPS = 0x8080808080808080L;

  final byte[] window;

  /** The next bit of the window to read. */
  int at;

  private final byte[] source;
  private final int end;
  private final int capacity;
  private int from;
  private int filled;
  private int limit;
  private boolean ended;

  ScanBits(byte[] source, int from, int end) {
    this.source = source;
    this.from = from;
    this.end = end;
    this.capacity = Math.min(WINDOW, Math.max(2 * SLACK, end - from + 16));
    this.window = new byte[capacity + SLACK];
    fill();
  }

  /** Makes sure that a whole block can be read. */
  void ready() throws JpegFault {
    if (at > limit) {
      refill();
    }
  }

  /** 64 bits from a place in the window; the last seven may be missing. */
  long word(int bit) {
    return (long) WORD.get(window, bit >>> 3) << (bit & 7);
  }

  /** The next 1 to 16 bits as a number. */
  int take(int length) {
    int value = (int) (word(at) >>> (64 - length));
    at += length;
    return value;
  }

  /** About where in the file the next bit stands. */
  int position() {
    return Math.max(0, from - Math.max(0, filled - (at >>> 3)));
  }

  /** Requires that the interval ends here, and the scan with it. */
  void requireEnd() throws JpegFault {
    requireIntervalEnd();
    if (from < end) {
      throw stray();
    }
  }

  /**
   * Goes on after the next restart marker.
   *
   * @param number the number it must bear, 0 to 7
   */
  void restart(int number) throws JpegFault {
    requireIntervalEnd();
    if (from >= end || Bytes.u8(source, from) != Markers.RST0 + number) {
      throw JpegFault.damaged(
          "restart marker " + number + " was expected near byte " + from + " and is not there");
    }
    from++;
    at = 0;
    filled = 0;
    ended = false;
    fill();
  }

  private void requireIntervalEnd() throws JpegFault {
    if (at > limit) {
      refill();
    }
    if (!ended || filled * 8 - at > 7) {
      throw stray();
    }
  }

  private JpegFault stray() {
    return JpegFault.damaged("stray bytes in the picture's data near byte " + position());
  }

  private void refill() throws JpegFault {
    if (ended) {
      throw JpegFault.damaged("the picture's data ends too early, near byte " + position());
    }
    int first = at >>> 3;
    System.arraycopy(window, first, window, 0, filled - first);
    filled -= first;
    at &= 7;
    fill();
  }

  private void fill() {
    byte[] to = window;
    int size = filled;
    int next = from;
    while (size < capacity - 8 && !ended) {
      if (next <= end - 8) {
        long word = (long) WORD.get(source, next);
        if (hasNoFill(word)) {
          WORD.set(to, size, word);
          size += 8;
          next += 8;
          continue;
        }
      }
      // Up to the next FF, one by one.
      while (next < end && source[next] != (byte) 0xFF && size < capacity) {
        to[size++] = source[next++];
      }
      if (next >= end) {
        ended = true;
      } else if (source[next] == (byte) 0xFF) {
        if (next + 1 < end && source[next + 1] == 0) {
          to[size++] = (byte) 0xFF;
          next += 2;
        } else {
          next = afterFill(next);
          ended = true;
        }
      }
    }
    from = next;
    filled = size;
    limit = ended ? size * 8 : (size - SLACK) * 8;
    Arrays.fill(to, size, Math.min(to.length, size + SLACK), (byte) 0);
  }

  /** True if none of eight bytes is FF. */
  static boolean hasNoFill(long word) {
    return fill(word) == 0;
  }

  /** Not 0 if one of eight bytes is FF. */
  static long fill(long word) {
    return (~word - ONES) & word & TOPS;
  }

  private int afterFill(int first) {
    int next = first;
    while (next < end && source[next] == (byte) 0xFF) {
      next++;
    }
    return next;
  }
}
