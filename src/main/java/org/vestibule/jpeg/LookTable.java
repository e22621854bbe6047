package org.vestibule.jpeg;

/**
 * A Huffman table of AC symbols laid out for taking in two coefficients in one look, as values:
 * what a {@link PairTable} is for tokens.
 *
 * <p>An entry holds, from its lowest bit, the length of all codes and values (8 bits), the steps
 * they take along the zigzag (8), the steps of the first alone (8), and both values (16 each,
 * signed; 0 where there is none); its sign is set if the block ends with them. 0 stands for what
 * doesn't fit.
 */
final class LookTable {

  private LookTable() {}

  /** The entries that say the same as a table's pairs. */
  static long[] of(long[] pairs) {
    long[] look = new long[pairs.length];
    for (int i = 0; i < pairs.length; i++) {
      look[i] = pairs[i] == 0 ? 0 : entry(pairs[i]);
    }
    return look;
  }

  private static long entry(long pair) {
    int first = (int) (pair >>> 16) & 0xFFFF;
    int second = (pair >>> 48 & 3) == 2 ? (int) (pair >>> 32) & 0xFFFF : 0;
    long firstSteps = first >>> 8 == 0 ? 0 : (first >>> 12) + 1;
    return (pair & 0xFFFF)
        | (firstSteps << 16)
        | ((value(first) & 0xFFFFL) << 24)
        | ((value(second) & 0xFFFFL) << 40)
        | (pair & Long.MIN_VALUE);
  }

  /** The value of a token whose bits stand in it (T.81 F.2.2.1, EXTEND); 0 of none. */
  private static int value(int token) {
    return value(token >>> 8 & 15, token & 0xFF);
  }

  /** A coefficient of its additional bits (T.81 F.2.2.1, EXTEND); 0 of none. */
  static int value(int size, int bits) {
    int half = 1 << size >> 1;
    return bits < half ? bits + 1 - (1 << size) : bits;
  }
}
