package org.vestibule.jpeg;

import java.util.Arrays;

/**
 * Reads blocks of baseline and extended sequential scans into tokens (ITU-T T.81 F.2.2). This and
 * {@link ScanWriter} are where the time goes: state lives in locals, nothing is allocated for a
 * block, and a value is never computed where its bits will do.
 */
final class SequentialTokens {

  private static final int MOST_DC_BITS = 11;
  private static final int MOST_AC_BITS = 10;

  /** A code and its value take at most this many bits. */
  private static final int LONGEST = 31;

  private static final int[] TRANSPOSED = transposed();

  private final ScanBits in;
  private final Tokens out;
  private final boolean transposes;
  private final int[] predictions;

  /** Size and bits of the coefficients of one block at their transposed places. */
  private final int[] values = new int[64 + 16];

  /** Set once a value was met that a baseline picture can't carry. */
  boolean beyondBaseline;

  SequentialTokens(ScanBits in, Tokens out, boolean transposes, int parts) {
    this.in = in;
    this.out = out;
    this.transposes = transposes;
    this.predictions = new int[parts];
  }

  private static int[] transposed() {
    int[] places = new int[64 + 16];
    for (int i = 0; i < 64; i++) {
      places[i] = Zigzag.position(Zigzag.natural(i) & 7, Zigzag.natural(i) >> 3);
    }
    return places;
  }

  /** Forgets predictions, as at the start of every restart interval. */
  void reset() {
    Arrays.fill(predictions, 0);
  }

  /** Reads a block and keeps it as this block of the plane. */
  void block(TokenPlane plane, int index, int part, LookupTable dc, LookupTable ac)
      throws JpegFault {
    in.ready();
    plane.dc[index] = dc(part, dc);
    plane.place[index] = out.begin();
    out.next = transposes ? transposed(ac, plane.acCounts) : straight(ac, plane.acCounts);
  }

  /** Reads a block that only fills up an MCU, and forgets it. */
  void padding(int part, LookupTable dc, LookupTable ac, int[] counts) throws JpegFault {
    in.ready();
    dc(part, dc);
    out.begin();
    straight(ac, counts);
  }

  private short dc(int part, LookupTable table) throws JpegFault {
    long word = in.word(in.at);
    int entry = table.look[(int) (word >>> LookupTable.SHIFT)];
    if (entry == 0) {
      entry = table.longEntry(word);
    }
    int size = entry >>> 16;
    if (entry == 0 || size > 15) {
      throw damaged("no such code");
    }
    if (size > 0) {
      int bits = (int) (word << (entry >>> 8 & 31) >>> (64 - size));
      // Negative differences come as their magnitude's complement (T.81 F.2.2.1, EXTEND).
      predictions[part] += bits < 1 << (size - 1) ? bits - (1 << size) + 1 : bits;
      beyondBaseline |= size > MOST_DC_BITS;
    }
    in.at += entry & 31;
    short value = (short) predictions[part];
    if (value != predictions[part]) {
      throw damaged("a brightness out of range");
    }
    return value;
  }

  private int straight(LookupTable table, int[] counts) throws JpegFault {
    int[] look = table.look;
    short[] chunk = out.chunk;
    int next = out.next;
    int at = in.at;
    long word = in.word(at);
    int left = 57;
    int position = 0;
    do {
      if (left < LONGEST) {
        word = in.word(at);
        left = 57;
      }
      int entry = look[(int) (word >>> LookupTable.SHIFT)];
      if (entry == 0) {
        entry = table.longEntry(word);
      }
      int symbol = entry >>> 16;
      int size = symbol & 15;
      int bits = (int) (word << (entry >>> 8 & 31) >>> 1 >>> (63 - size));
      int length = entry & 31;
      word <<= length;
      at += length;
      left -= length;
      if (size == 0) {
        if (symbol == 0xF0) {
          position += 16;
          counts[symbol]++;
          chunk[next++] = Tokens.ZERO_RUN;
          continue;
        }
        in.at = at;
        return end(chunk, next, entry, counts);
      }
      position += (symbol >>> 4) + 1;
      counts[symbol]++;
      if (size > Tokens.MOST_BITS) {
        beyondBaseline |= size > MOST_AC_BITS;
        chunk[next++] = (short) (symbol << 8);
        chunk[next++] = (short) bits;
      } else {
        chunk[next++] = (short) (symbol << 8 | bits);
      }
    } while (position < 63);
    in.at = at;
    if (position > 63 || chunk[next - 1] == Tokens.ZERO_RUN) {
      throw damaged("a run goes past the end of a block");
    }
    chunk[next++] = Tokens.FULL;
    return next;
  }

  /** Ends a block; zero runs right before its end say nothing and are left out. */
  private int end(short[] chunk, int after, int entry, int[] counts) throws JpegFault {
    if (entry == 0 || entry >>> 16 != 0) {
      throw damaged(entry == 0 ? "no such code" : "no such run");
    }
    int next = after;
    while (next > out.next && chunk[next - 1] == Tokens.ZERO_RUN) {
      next--;
      counts[0xF0]--;
    }
    counts[0]++;
    chunk[next++] = Tokens.END;
    return next;
  }

  private int transposed(LookupTable table, int[] counts) throws JpegFault {
    int[] look = table.look;
    int at = in.at;
    long word = in.word(at);
    int left = 57;
    int position = 0;
    long filled = 0;
    do {
      if (left < LONGEST) {
        word = in.word(at);
        left = 57;
      }
      int entry = look[(int) (word >>> LookupTable.SHIFT)];
      if (entry == 0) {
        entry = table.longEntry(word);
      }
      int symbol = entry >>> 16;
      int size = symbol & 15;
      int bits = (int) (word << (entry >>> 8 & 31) >>> 1 >>> (63 - size));
      int length = entry & 31;
      word <<= length;
      at += length;
      left -= length;
      if (size == 0) {
        if (symbol == 0xF0) {
          position += 16;
          continue;
        }
        if (entry == 0 || symbol != 0) {
          throw damaged(entry == 0 ? "no such code" : "no such run");
        }
        in.at = at;
        return rewrite(filled, counts);
      }
      position += (symbol >>> 4) + 1;
      int place = TRANSPOSED[position];
      values[place] = size << 16 | bits;
      filled |= 1L << place;
    } while (position < 63);
    in.at = at;
    if (position > 63) {
      throw damaged("a run goes past the end of a block");
    }
    return rewrite(filled, counts);
  }

  /** The tokens of the values at the places that are filled. */
  private int rewrite(long filled, int[] counts) {
    short[] chunk = out.chunk;
    int next = out.next;
    int last = 0;
    for (long rest = filled; rest != 0; rest &= rest - 1) {
      int place = Long.numberOfTrailingZeros(rest);
      int run = place - last - 1;
      while (run > 15) {
        run -= 16;
        counts[0xF0]++;
        chunk[next++] = Tokens.ZERO_RUN;
      }
      int value = values[place];
      int size = value >>> 16;
      int symbol = run << 4 | size;
      counts[symbol]++;
      if (size > Tokens.MOST_BITS) {
        beyondBaseline |= size > MOST_AC_BITS;
        chunk[next++] = (short) (symbol << 8);
        chunk[next++] = (short) value;
      } else {
        chunk[next++] = (short) (symbol << 8 | (value & 0xFF));
      }
      last = place;
    }
    if (last < 63) {
      counts[0]++;
      chunk[next++] = Tokens.END;
    } else {
      chunk[next++] = Tokens.FULL;
    }
    return next;
  }

  private JpegFault damaged(String what) {
    return JpegFault.damaged(
        "the picture's data is damaged near byte " + in.position() + " (" + what + ")");
  }
}
