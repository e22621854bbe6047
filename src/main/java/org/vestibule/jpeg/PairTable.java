package org.vestibule.jpeg;

/**
 * A Huffman table of AC symbols laid out for decoding two coefficients in one look, their values
 * included.
 *
 * <p>An entry holds, from its lowest bit, the length of all codes and values (8 bits), the steps
 * they take along the zigzag (8), two tokens (16 each) and how many of them there are (8); its sign
 * is set if the block ends with them. 0 stands for what doesn't fit, zero runs among it.
 */
final class PairTable {

  private static final int LOOK_BITS = 11;

  /** Number of entries. */
  static final int ENTRIES = 1 << LOOK_BITS;

  /** Right shift that leaves the bits looked up of a word. */
  static final int SHIFT = 64 - LOOK_BITS;

  final long[] look = new long[ENTRIES];

  PairTable(LookupTable table) {
    for (int bits = 0; bits < look.length; bits++) {
      long word = (long) bits << SHIFT;
      int first = table.entry(word);
      if (fits(first, 0)) {
        look[bits] = with(first, table, word);
      }
    }
  }

  private static long with(int first, LookupTable table, long word) {
    long one = token(first, word) << 16 | 1L << 48 | steps(first) << 8 | (first & 63);
    if (first >>> 24 == 0) {
      return one | Long.MIN_VALUE;
    }
    int second = table.entry(word << first);
    if (!fits(second, first & 63)) {
      return one;
    }
    long end = second >>> 24 == 0 ? Long.MIN_VALUE : 0;
    return one
            + (token(second, word << first) << 32 | 1L << 48 | steps(second) << 8 | (second & 63))
        | end;
  }

  private static boolean fits(int entry, int used) {
    int size = entry >>> 24 & 15;
    boolean plain = size > 0 ? size <= Tokens.MOST_BITS : entry >>> 24 == 0;
    return entry != 0 && plain && used + (entry & 63) <= LOOK_BITS;
  }

  private static long token(int entry, long word) {
    int size = entry >>> 24 & 15;
    long bits = size == 0 ? 0 : word << (entry >>> 8) >>> -size;
    return (entry >>> 24) << 8 | bits;
  }

  /** Steps along the zigzag; the end of a block takes none. */
  private static long steps(int entry) {
    return entry >>> 24 == 0 ? 0 : (entry >>> 28) + 1;
  }
}
