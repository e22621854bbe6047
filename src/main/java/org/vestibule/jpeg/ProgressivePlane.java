package org.vestibule.jpeg;

/**
 * The coefficients of one component while progressive scans come in: the blocks that hold picture
 * samples, row by row.
 */
final class ProgressivePlane {

  final JpegComponent component;
  final BlockGrid grid;

  /** The blocks' DC coefficients, which come in scans of their own. */
  final short[] dc;

  /** The largest magnitude of an AC coefficient in a baseline picture (T.81 Table F.2). */
  static final int LARGEST = 1023;

  /**
   * Magnitudes of the AC coefficients of all planes without their lowest two bits, which are in
   * {@link #twos} and {@link #ones}: 64 places for each block in zigzag order.
   */
  final byte[] quarters;

  /** The first place of this plane. */
  final int offset;

  /**
   * For each block, a bit for each AC coefficient that is not zero. Later scans depend on which
   * those are; most blocks can be refined, or passed over, without touching their magnitudes.
   */
  final long[] filled;

  /** For each block, a bit for each AC coefficient below zero. */
  final long[] negative;

  /** For each block, the next to lowest bit of each magnitude. */
  final long[] twos;

  /** For each block, the lowest bit of each magnitude. */
  final long[] ones;

  /**
   * True if each block's {@link #ones} stand one after another from the highest bit, in the order
   * of the coefficients that are not zero: the order in which a last scan delivers them and in
   * which they are written, so that nobody need spread them over their places.
   */
  boolean packed;

  /**
   * For one component.
   *
   * @param quarters all zero, for all components
   * @param offset the component's first place in it
   */
  ProgressivePlane(JpegComponent component, BlockGrid grid, byte[] quarters, int offset) {
    this.component = component;
    this.grid = grid;
    this.quarters = quarters;
    this.offset = offset;
    this.dc = new short[blocks(grid)];
    this.filled = new long[dc.length];
    this.negative = new long[dc.length];
    this.twos = new long[dc.length];
    this.ones = new long[dc.length];
  }

  /** Blocks of a plane. */
  static int blocks(BlockGrid grid) {
    return Math.multiplyExact(grid.wide(), grid.high());
  }

  /** The first place of a block. */
  int base(int index) {
    return offset + (index << 6);
  }

  /**
   * Takes one more bit of a block's magnitudes.
   *
   * @param low the bit's weight as a power of two
   * @param bits those that are set, of new coefficients too
   * @param fresh coefficients that were zero before
   * @param below those of them that are negative
   */
  void refine(int index, int low, long bits, long fresh, long below) {
    filled[index] |= fresh;
    negative[index] |= below;
    switch (low) {
      case 0 -> ones[index] |= bits;
      case 1 -> twos[index] |= bits;
      default -> {
        for (long rest = bits; rest != 0; rest &= rest - 1) {
          quarters[base(index) + Long.numberOfTrailingZeros(rest)] |= (byte) (1 << (low - 2));
        }
      }
    }
  }

  /** The lowest bits of a block's magnitudes, one after another from the highest bit. */
  long packedOnes(int index) {
    if (packed) {
      return ones[index];
    }
    long bits = 0;
    int count = 0;
    for (long rest = filled[index]; rest != 0; rest &= rest - 1) {
      bits |= (ones[index] >>> Long.numberOfTrailingZeros(rest)) << 63 >>> count++;
    }
    return bits;
  }

  /** Writes a block as tokens, counts its symbols and sets its quarters back to zero. */
  void write(int index, Tokens out, int[] counts) {
    int base = base(index);
    long below = negative[index];
    long two = twos[index];
    long one = packedOnes(index);
    short[] chunk = out.chunk;
    int next = out.next;
    int last = 0;
    for (long rest = filled[index]; rest != 0; rest &= rest - 1) {
      int position = Long.numberOfTrailingZeros(rest);
      int magnitude = (quarters[base + position] & 0xFF) << 2;
      magnitude |= (int) (two >>> position & 1) << 1 | (int) (one >>> 63);
      one <<= 1;
      int size = 32 - Integer.numberOfLeadingZeros(magnitude);
      int bits = (magnitude ^ -(int) (below >>> position & 1)) & ((1 << size) - 1);
      int run = position - last - 1;
      last = position;
      while (run > 15) {
        run -= 16;
        counts[0xF0]++;
        chunk[next++] = Tokens.ZERO_RUN;
      }
      int symbol = run << 4 | size;
      counts[symbol]++;
      if (size > Tokens.MOST_BITS) {
        chunk[next++] = (short) (symbol << 8);
        chunk[next++] = (short) bits;
      } else {
        chunk[next++] = (short) (symbol << 8 | bits);
      }
    }
    if (last < 63) {
      counts[0]++;
    }
    chunk[next++] = last < 63 ? Tokens.END : Tokens.FULL;
    out.next = next;
    forget(index);
  }

  /** Counts a block's symbols. */
  void count(int index, int[] counts) {
    int base = base(index);
    long two = twos[index];
    long one = packedOnes(index);
    int last = 0;
    for (long rest = filled[index]; rest != 0; rest &= rest - 1) {
      int position = Long.numberOfTrailingZeros(rest);
      int magnitude = (quarters[base + position] & 0xFF) << 2;
      magnitude |= (int) (two >>> position & 1) << 1 | (int) (one >>> 63);
      one <<= 1;
      int run = position - last - 1;
      last = position;
      counts[0xF0] += run >> 4;
      counts[(run & 15) << 4 | 32 - Integer.numberOfLeadingZeros(magnitude)]++;
    }
    if (last < 63) {
      counts[0]++;
    }
  }

  /** Sets a block's quarters back to zero. */
  void forget(int index) {
    int base = base(index);
    for (long rest = filled[index]; rest != 0; rest >>>= 32) {
      ScanBits.WORD.set(quarters, base, 0L);
      ScanBits.WORD.set(quarters, base + 8, 0L);
      ScanBits.WORD.set(quarters, base + 16, 0L);
      ScanBits.WORD.set(quarters, base + 24, 0L);
      base += 32;
    }
  }

  /** Puts down a block's values and sets its quarters back to zero. */
  void write(int index, int[] places, ScatteredBlock block) {
    int base = base(index);
    long below = negative[index];
    long two = twos[index];
    long one = packedOnes(index);
    for (long rest = filled[index]; rest != 0; rest &= rest - 1) {
      int position = Long.numberOfTrailingZeros(rest);
      int magnitude = (quarters[base + position] & 0xFF) << 2;
      magnitude |= (int) (two >>> position & 1) << 1 | (int) (one >>> 63);
      one <<= 1;
      block.put(places[position], magnitude, (int) -(below >>> position & 1));
    }
    forget(index);
  }
}
