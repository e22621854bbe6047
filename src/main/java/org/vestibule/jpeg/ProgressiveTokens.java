package org.vestibule.jpeg;

import java.util.Arrays;

/** Reads blocks of progressive scans: first and refining, DC and AC (ITU-T T.81 G.1.2, G.2). */
final class ProgressiveTokens {

  /** Bits of a word that are surely there. */
  private static final int FULL_BITS = 57;

  /** Bits that can be read of a word before it may hold less than a code and its value. */
  private static final int WHOLE = FULL_BITS - 31;

  private final ScanBits in;
  private final boolean first;
  private final LookupTable[] tables;
  private final int low;
  private final int start;
  private final int end;

  /** A bit for each coefficient of the scan's band. */
  private final long band;

  private final int[] predictions;

  /** Blocks of the band that still end without further values. */
  private int endOfBandRun;

  /**
   * For one scan.
   *
   * @param tables the DC tables of a first DC scan, the AC table of an AC scan, else empty
   */
  ProgressiveTokens(ScanBits in, ScanHeader header, LookupTable[] tables) {
    this.in = in;
    this.first = header.high() == 0;
    this.tables = tables.clone();
    this.low = header.low();
    this.start = header.spectralStart();
    this.end = header.spectralEnd();
    this.band = -1L >>> (63 - end) & -1L << start;
    this.predictions = new int[header.components().size()];
  }

  /** Forgets predictions and runs, as at the start of every restart interval. */
  void reset() {
    Arrays.fill(predictions, 0);
    endOfBandRun = 0;
  }

  /**
   * Reads the DC bits of a block.
   *
   * @param index of the block, or -1 if it only fills up an MCU
   */
  void dc(ProgressivePlane plane, int index, int part) throws JpegFault {
    in.ready();
    int value = first ? firstDc(part) : in.take(1) << low;
    if (index >= 0) {
      plane.dc[index] |= (short) value;
    }
  }

  private int firstDc(int part) throws JpegFault {
    long word = in.word(in.at);
    int entry = tables[part].entry(word);
    int size = entry >>> 24;
    if (entry == 0 || size > 15) {
      throw damaged("no such code");
    }
    if (size > 0) {
      predictions[part] += extended((int) (word << (entry >>> 8) >>> -size), size);
    }
    in.at += entry & 63;
    return inRange(predictions[part] << low, predictions[part]);
  }

  /**
   * Passes over blocks of a first scan that have nothing in its band.
   *
   * @param most blocks that are left
   * @return how many were passed
   */
  int pass(int most) {
    if (!first || endOfBandRun == 0) {
      return 0;
    }
    int passed = Math.min(endOfBandRun, most);
    endOfBandRun -= passed;
    return passed;
  }

  /** Reads the AC bits of a block. */
  void ac(ProgressivePlane plane, int index) throws JpegFault {
    if (first) {
      if (endOfBandRun > 0) {
        endOfBandRun--;
      } else {
        in.ready();
        plane.filled[index] |= firstAc(plane.values, plane.base(index));
      }
    } else if (endOfBandRun == 0 || (plane.filled[index] & band) != 0) {
      in.ready();
      plane.filled[index] |= refineAc(plane.values, plane.base(index), plane.filled[index] & band);
    } else {
      endOfBandRun--;
    }
  }

  private long firstAc(short[] values, int base) throws JpegFault {
    LookupTable table = tables[0];
    int at = in.at;
    int reload = at + WHOLE;
    long word = in.word(at);
    long filled = 0;
    int position = start;
    while (position <= end) {
      if (at > reload) {
        word = in.word(at);
        reload = at + WHOLE;
      }
      int entry = table.entry(word);
      int run = entry >>> 28;
      int size = entry >>> 24 & 15;
      at += entry & 63;
      if (size != 0) {
        position += run;
        if (position > end) {
          throw damaged("a run goes past the end of its band");
        }
        int value = extended((int) (word << (entry >>> 8) >>> -size), size);
        values[base + position] = inRange(value << low, value);
        filled |= 1L << position;
        position++;
      } else if (run == 15) {
        position += 16;
      } else {
        endOfBandRun = endOfBand(entry, word << entry) - 1;
        at += run;
        break;
      }
      word <<= entry;
    }
    in.at = at;
    return filled;
  }

  /** Returns a bit for each coefficient that is new. */
  private long refineAc(short[] values, int base, long known) throws JpegFault {
    LookupTable table = tables[0];
    int at = in.at;
    long fresh = 0;
    int position = start;
    while (endOfBandRun == 0 && position <= end) {
      long word = in.word(at);
      int entry = table.entry(word);
      int run = entry >>> 28;
      int size = entry >>> 24 & 15;
      at += entry & 63;
      if (size == 0 && run < 15) {
        endOfBandRun = endOfBand(entry, word << entry);
        at += run;
        break;
      }
      if (size > 1) {
        throw damaged("a refinement by more than one bit");
      }
      int next = afterZeros(known, position, run);
      long between = known & below(next) & -1L << position;
      refine(values, base, between, at);
      at += Long.bitCount(between);
      if (size == 1) {
        if (next > end) {
          throw damaged("a run goes past the end of its band");
        }
        int value = word << (entry >>> 8) < 0 ? 1 : -1;
        values[base + next] = (short) (value << low);
        fresh |= 1L << next;
      }
      position = next + 1;
    }
    if (endOfBandRun > 0) {
      if (position <= end) {
        long rest = known & -1L << position;
        refine(values, base, rest, at);
        at += Long.bitCount(rest);
      }
      endOfBandRun--;
    }
    in.at = at;
    return fresh;
  }

  /** The position of the zero that follows this many zeros, or one past the band. */
  private int afterZeros(long known, int from, int zeros) {
    long rest = ~known & band & -1L << from;
    for (int i = 0; i < zeros; i++) {
      rest &= rest - 1;
    }
    return rest == 0 ? end + 1 : Long.numberOfTrailingZeros(rest);
  }

  private static long below(int position) {
    return position > 63 ? -1L : (1L << position) - 1;
  }

  /**
   * Reads one more bit of each of these coefficients, from the bit at {@code from}. None can have
   * it already: the scans before ended at the next higher bit.
   */
  private void refine(short[] values, int base, long which, int from) {
    long word = 0;
    int left = 0;
    int at = from;
    for (long rest = which; rest != 0; rest &= rest - 1) {
      if (left == 0) {
        word = in.word(at);
        left = FULL_BITS;
        at += FULL_BITS;
      }
      left--;
      int place = base + Long.numberOfTrailingZeros(rest);
      int value = values[place];
      // Away from zero by one bit if the next bit, which is the sign of the word, is set.
      values[place] = (short) (value + (((value >> 31 | 1) << low) & (int) (word >> 63)));
      word <<= 1;
    }
  }

  private int endOfBand(int entry, long after) throws JpegFault {
    if (entry == 0) {
      throw damaged("no such code");
    }
    int bits = entry >>> 28;
    return (1 << bits) + (bits == 0 ? 0 : (int) (after >>> -bits));
  }

  private static int extended(int bits, int size) {
    return bits < 1 << (size - 1) ? bits - (1 << size) + 1 : bits;
  }

  private short inRange(int shifted, int value) throws JpegFault {
    if ((short) shifted != shifted || (short) value != value) {
      throw damaged("a value out of range");
    }
    return (short) shifted;
  }

  private JpegFault damaged(String what) {
    return JpegFault.damaged(
        "the picture's data is damaged near byte " + in.position() + " (" + what + ")");
  }
}
