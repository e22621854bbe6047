package org.vestibule.jpeg;

import java.util.Arrays;

/** Reads blocks of progressive scans: first and refining, DC and AC (ITU-T T.81 G.1.2, G.2). */
final class ProgressiveTokens {

  /** Bits of a word that are surely there. */
  private static final int FULL_BITS = 57;

  /** Bits that can be read of a word before it may hold less than a code and its value. */
  private static final int WHOLE = FULL_BITS - 31;

  /** Bits that are surely left of a word after a code that was read of it, and its sign. */
  private static final int SPARE = FULL_BITS - WHOLE - 17;

  private final ScanBits in;
  private final boolean first;
  private final LookupTable[] tables;
  private final int low;
  private final int start;
  private final int end;

  /** A bit for each coefficient of the scan's band. */
  private final long band;

  private final int[] predictions;
  private final SetBits zeros = new SetBits();

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
      predictions[part] += LookupTable.value(size, (int) (word << (entry >>> 8) >>> -size));
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
        firstAc(plane, index);
      }
    } else if (endOfBandRun == 0 || (plane.filled[index] & band) != 0) {
      in.ready();
      refineAc(plane, index);
    } else {
      endOfBandRun--;
    }
  }

  private void firstAc(ProgressivePlane plane, int index) throws JpegFault {
    LookupTable table = tables[0];
    short[] magnitudes = plane.magnitudes;
    int base = plane.base(index);
    int at = in.at;
    int reload = at + WHOLE;
    long word = in.word(at);
    long filled = 0;
    long negative = 0;
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
        long coded = word << (entry >>> 8);
        int magnitude = (int) ((coded ^ ~(coded >> 63)) >>> -size);
        magnitudes[base + position] = inRange(magnitude << low, magnitude);
        filled |= 1L << position;
        negative |= (~coded >>> 63) << position;
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
    plane.filled[index] |= filled;
    plane.negative[index] |= negative;
  }

  /**
   * Refines a block without touching its magnitudes. The bits that correct coefficients known
   * before come in the order of their positions, between the codes of the new ones: they are
   * gathered, and spread over the positions once at the end of the block.
   */
  private void refineAc(ProgressivePlane plane, int index) throws JpegFault {
    long known = plane.filled[index] & band;
    if (endOfBandRun > 0) {
      endOfBandRun--;
      int count = Long.bitCount(known);
      plane.refine(index, low, spread(bits(in.at, count), known), 0, 0);
      in.at += count;
      return;
    }
    LookupTable table = tables[0];
    zeros.of(~known & band);
    int at = in.at;
    int reload = at + WHOLE;
    long word = in.word(at);
    long corrections = 0;
    int corrected = 0;
    long fresh = 0;
    long negative = 0;
    int position = start;
    int zero = 0;
    do {
      if (at > reload) {
        word = in.word(at);
        reload = at + WHOLE;
      }
      int entry = table.entry(word);
      int run = entry >>> 28;
      int size = entry >>> 24 & 15;
      at += entry & 63;
      if (size == 0 && run < 15) {
        endOfBandRun = endOfBand(entry, word << entry) - 1;
        at += run;
        int count = Long.bitCount(known & -1L << position);
        corrections |= bits(at, count) >>> corrected;
        at += count;
        break;
      }
      zero += run;
      int next = end + 1;
      int count;
      if (zero < zeros.count) {
        next = zeros.place(zero);
        count = next - position - run;
      } else {
        count = Long.bitCount(known & -1L << position);
      }
      requireBit(size, next);
      long bit = size;
      fresh |= bit << next;
      negative |= (bit & ~(word << (entry >>> 8)) >>> 63) << next;
      if (count > SPARE) {
        corrections |= bits(at, count) >>> corrected;
        word = in.word(at + count);
        reload = at + count + WHOLE;
      } else {
        word <<= entry;
        corrections |= (word & ~(-1L >>> count)) >>> corrected;
        word <<= count;
      }
      corrected += count;
      at += count;
      zero++;
      position = next + 1;
    } while (position <= end);
    in.at = at;
    plane.refine(index, low, spread(corrections, known), fresh, negative);
  }

  /** Requires that a new coefficient is 1 or -1, and in the band. */
  private void requireBit(int size, int position) throws JpegFault {
    if (size > 1) {
      throw damaged("a refinement by more than one bit");
    }
    if (size == 1 && position > end) {
      throw damaged("a run goes past the end of its band");
    }
  }

  /** The next bits, 63 at most, on top of a word that is zero below them. */
  private long bits(int at, int count) {
    long word = in.word(at);
    if (count > FULL_BITS) {
      word |= in.word(at + 32) >>> 32;
    }
    return word & ~(-1L >>> count);
  }

  /** The bits of a word, from the top, at the positions that are set in a mask, from the lowest. */
  private static long spread(long bits, long mask) {
    long word = bits;
    long spread = 0;
    for (long rest = mask; rest != 0; rest &= rest - 1) {
      spread |= rest & -rest & word >> 63;
      word <<= 1;
    }
    return spread;
  }

  private int endOfBand(int entry, long after) throws JpegFault {
    if (entry == 0) {
      throw damaged("no such code");
    }
    int bits = entry >>> 28;
    return (1 << bits) + (bits == 0 ? 0 : (int) (after >>> -bits));
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
