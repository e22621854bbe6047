package org.vestibule.jpeg;

import java.util.Arrays;

/**
 * A Huffman table laid out for decoding a symbol in one look: each entry says how many bits code
 * and value take together (ITU-T T.81 F.2.2.3, with a table in place of its loop).
 *
 * <p>An entry is {@code symbol << 24 | code length << 8 | code and value length}. Shifting by an
 * entry, or by an entry shifted right by eight, shifts by one of the lengths, because a shift takes
 * the lowest six bits only.
 */
final class LookupTable {

  /** Right shift that leaves the bits looked up of a word. */
  static final int SHIFT = 64 - 10;

  private static final int LOOK_BITS = 64 - SHIFT;
  private static final int LONGEST = 16;

  /** Entries by the next bits; 0 where the code is longer. */
  final int[] look = new int[1 << LOOK_BITS];

  /** One past the largest code of each length, shifted to 16 bits. */
  private final int[] limit = new int[LONGEST + 1];

  /** Index of the first symbol of each length, less its code. */
  private final int[] offset = new int[LONGEST + 1];

  private final HuffmanTable table;

  /** Entries of a {@link PairTable}; none for tables without pairs. */
  final long[] pairs;

  /** For DC tables and the AC tables of progressive scans. */
  static LookupTable of(HuffmanTable table) {
    return new LookupTable(table, false);
  }

  /** For the AC tables of sequential scans. */
  static LookupTable withPairs(HuffmanTable table) {
    return new LookupTable(table, true);
  }

  private LookupTable(HuffmanTable table, boolean pairs) {
    this.table = table;
    int code = 0;
    int index = 0;
    for (int length = 1; length <= LONGEST; length++) {
      offset[length] = index - code;
      for (int i = 0; i < table.count(length); i++, code++, index++) {
        if (length <= LOOK_BITS) {
          int from = code << (LOOK_BITS - length);
          int to = (code + 1) << (LOOK_BITS - length);
          Arrays.fill(look, from, to, entry(index, length));
        }
      }
      limit[length] = code << (LONGEST - length);
      code <<= 1;
    }
    this.pairs = pairs ? new PairTable(this).look : new long[0];
  }

  private int entry(int index, int length) {
    int symbol = table.symbol(index);
    return symbol << 24 | length << 8 | (length + (symbol & 15));
  }

  /** The entry of the code that a word starts with; 0 if it starts with none. */
  int entry(long word) {
    int entry = look[(int) (word >>> SHIFT)];
    return entry != 0 ? entry : longEntry(word);
  }

  private int longEntry(long word) {
    int bits = (int) (word >>> 48);
    for (int length = LOOK_BITS + 1; length <= LONGEST; length++) {
      if (bits < limit[length]) {
        return entry((bits >>> (LONGEST - length)) + offset[length], length);
      }
    }
    return 0;
  }

  /** A coefficient of its additional bits (T.81 F.2.2.1, EXTEND); 0 of none. */
  static int value(int size, int bits) {
    int half = 1 << size >> 1;
    return bits < half ? bits + 1 - (1 << size) : bits;
  }
}
