package org.vestibule.jpeg;

import java.util.Arrays;

/** Reads blocks of progressive scans: first and refining, DC and AC (ITU-T T.81 G.1.2, G.2). */
final class ProgressiveTokens {

  /** Bits of a word that are surely there. */
  private static final int FULL_BITS = 57;

  /** Bits that can be read of a word before it may hold less than a code and its value. */
  private static final int WHOLE = FULL_BITS - 31;

  /** Bits that can be read of a word before it may hold less than a code and a sign. */
  private static final int CODES = FULL_BITS - 17;

  private final ScanBits in;
  private final boolean first;
  private final LookupTable[] tables;

  /** By the next bits, what they refine; empty for other scans. */
  private final int[] refining;

  private final int low;
  private final int start;
  private final int end;

  /** True if the scan ends all AC coefficients, whose last bits are then kept as they come. */
  private final boolean packs;

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
    this.packs = !first && low == 0 && start == 1 && end == 63;
    this.refining = first || start == 0 ? new int[0] : refining(tables[0]);
    this.predictions = new int[header.components().size()];
  }

  /** As {@link ProgressivePlane#packed}. */
  boolean packs() {
    return packs;
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
    byte[] quarters = plane.quarters;
    int base = plane.base(index);
    int at = in.at;
    int reload = at + WHOLE;
    long word = in.word(at);
    long filled = 0;
    long negative = 0;
    long two = 0;
    long one = 0;
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
        int shifted = magnitude << low;
        if (shifted > ProgressivePlane.LARGEST) {
          throw damaged("a value out of range");
        }
        quarters[base + position] = (byte) (shifted >> 2);
        two |= (long) (shifted >> 1 & 1) << position;
        one |= (long) (shifted & 1) << position;
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
    plane.twos[index] |= two;
    plane.ones[index] |= one;
  }

  /**
   * Refines a block without touching its magnitudes. The bits that correct coefficients known
   * before come in the order of their positions, between the codes of the new ones: all are
   * gathered in that order, a one for each new coefficient among them.
   */
  private void refineAc(ProgressivePlane plane, int index) throws JpegFault {
    long known = plane.filled[index] & band;
    if (endOfBandRun > 0) {
      endOfBandRun--;
      int count = Long.bitCount(known);
      long bits = bits(in.at, count);
      plane.refine(index, low, packs ? bits : spread(bits, known), 0, 0);
      in.at += count;
      return;
    }
    int[] look = refining;
    zeros.of(~known & band);
    byte[] places = zeros.places;
    int listed = zeros.count;
    int last = end;
    int at = in.at;
    int most = at + CODES;
    long word = in.word(at);
    long bits = 0;
    long fresh = 0;
    long negative = 0;
    // How many zeros were passed, and how many of the places before were not.
    int zero = 0;
    int passed = start;
    int next = start - 1;
    while (true) {
      // New coefficients as long as the word lasts.
      while (next < last) {
        int entry = look[(int) (word >>> LookupTable.SHIFT)];
        int to = zero + (entry >>> 24);
        if (entry <= 0 || to >= listed) {
          break;
        }
        int place = places[to];
        int count = place - to - passed;
        int after = at + (entry & 63) + count;
        if (after > most) {
          break;
        }
        next = place;
        passed = place - to;
        zero = to + 1;
        at = after;
        long bit = 1L << place;
        fresh |= bit;
        negative |= bit & ~(word << (entry >>> 8) >> 63);
        word <<= entry;
        bits = bits << count << 1 | word >>> ~count | 1;
        word <<= count;
      }
      if (next >= last) {
        break;
      }
      // Any code.
      int entry = refining(tables[0].entry(in.word(at)));
      requireRun(entry);
      int run = entry >>> 24 & 15;
      at += entry & 63;
      zero += run;
      next = last + 1;
      int count = Long.bitCount(known) + start - passed;
      listed = zero < listed ? listed : zeros.all();
      if (entry < 0 && run < 15) {
        endOfBandRun = (1 << run) + (int) (in.word(at) >>> 1 >>> ~run) - 1;
        at += run;
      } else if (zero < listed) {
        next = places[zero];
        count = next - zero - passed;
      }
      bits = bits << count | bits(at, count) >>> 1 >>> ~count;
      if (entry > 0) {
        requireInBand(next);
        bits = bits << 1 | 1;
        fresh |= 1L << next;
        negative |= (~in.word(at - 1) >>> 63) << next;
      }
      at += count;
      passed = next - zero;
      zero++;
      word = in.word(at);
      most = at + CODES;
    }
    in.at = at;
    long filled = known | fresh;
    bits <<= -Long.bitCount(filled);
    plane.refine(index, low, packs ? bits : spread(bits, filled), fresh, negative);
  }

  /**
   * How a code refines: {@code run << 24 | code length << 8 | length}, the sign included, if it
   * brings a new coefficient; below zero if it doesn't; 0 if there is no such code.
   */
  private static int refining(int entry) {
    int run = entry >>> 28 << 24;
    int size = entry >>> 24 & 15;
    return size == 1 || entry == 0
        ? run | (entry & 0xFFFF)
        : Integer.MIN_VALUE | run | size << 16 | (entry & 0xFFFF);
  }

  private static int[] refining(LookupTable table) {
    int[] refining = table.look.clone();
    Arrays.setAll(refining, i -> refining(refining[i]));
    return refining;
  }

  /** Requires that a code that brings no new coefficient is one. */
  private void requireRun(int entry) throws JpegFault {
    if (entry == 0) {
      throw damaged("no such code");
    }
    if ((entry >>> 16 & 15) > 1) {
      throw damaged("a refinement by more than one bit");
    }
  }

  private void requireInBand(int position) throws JpegFault {
    if (position > end) {
      throw damaged("a run goes past the end of its band");
    }
  }

  /** The next bits, 63 at most, on top of a word. */
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
    long rest = mask;
    while (rest != 0) {
      // Four at a time: how many there are can't be foreseen.
      for (int i = 0; i < 4; i++) {
        spread |= rest & -rest & (word >> 63);
        word <<= 1;
        rest &= rest - 1;
      }
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
