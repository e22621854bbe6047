package org.vestibule.jpeg;

/** One block's coefficients, put down in any order, to be written as tokens in zigzag order. */
final class ScatteredBlock {

  /** The zigzag as it is. */
  private static final int[] STRAIGHT = places(false);

  /** Where each zigzag position goes when rows and columns change places. */
  private static final int[] TRANSPOSED = places(true);

  /** Size and bits of each coefficient, {@code size << 16 | bits}; runs may go past the end. */
  final int[] values = new int[64 + 16];

  /** The positions that are filled, one bit each. */
  long filled;

  /** The largest size met. */
  int largestSize;

  /** Where each of the stored block's positions goes, with room for runs past its end. */
  static int[] placesFor(boolean transposed) {
    return transposed ? TRANSPOSED : STRAIGHT;
  }

  private static int[] places(boolean transposed) {
    int[] places = new int[64 + 16];
    for (int i = 0; i < 64; i++) {
      int natural = Zigzag.natural(i);
      places[i] = transposed ? Zigzag.position(natural & 7, natural >> 3) : i;
    }
    return places;
  }

  /** Puts down a value that is not zero and has 15 bits at most. */
  void put(int place, int value) {
    put(place, Math.abs(value), value >> 31);
  }

  /**
   * Puts down a value that is not zero.
   *
   * @param magnitude of 15 bits at most
   * @param negative -1 if the value is below zero, else 0
   */
  void put(int place, int magnitude, int negative) {
    // Negative values are written as their magnitude's complement (T.81 F.1.2.1).
    int size = 32 - Integer.numberOfLeadingZeros(magnitude);
    values[place] = size << 16 | ((magnitude ^ negative) & ((1 << size) - 1));
    filled |= 1L << place;
  }

  /** Appends the block to the tokens, counts its symbols and forgets it. */
  void write(Tokens out, int[] counts) {
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
      last = place;
      counts[run << 4 | size]++;
      if (size > Tokens.MOST_BITS) {
        largestSize = Math.max(largestSize, size);
        chunk[next++] = (short) (run << 12 | size << 8);
        chunk[next++] = (short) value;
      } else {
        chunk[next++] = (short) (run << 12 | size << 8 | (value & 0xFF));
      }
    }
    if (last < 63) {
      counts[0]++;
    }
    chunk[next++] = last < 63 ? Tokens.END : Tokens.FULL;
    out.next = next;
    filled = 0;
  }
}
