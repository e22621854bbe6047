package org.vestibule.jpeg;

import java.util.Arrays;

/**
 * A Huffman table laid out for decoding a symbol in one look: each entry says how many bits code
 * and value take together (ITU-T T.81 F.2.2.3, with a table in place of its loop).
 *
 * <p>An entry is {@code symbol << 16 | code length << 8 | code and value length}; 0 is no code.
 */
final class LookupTable {

  /** Right shift that leaves the bits looked up of a word. */
  static final int SHIFT = 64 - 10;

  private static final int LOOK_BITS = 64 - SHIFT;
  private static final int LONGEST = 16;

  /** Entries by the next bits. */
  final int[] look = new int[1 << LOOK_BITS];

  /** One past the largest code of each length, shifted to 16 bits. */
  private final int[] limit = new int[LONGEST + 1];

  /** Index of the first symbol of each length, less its code. */
  private final int[] offset = new int[LONGEST + 1];

  private final HuffmanTable table;

  LookupTable(HuffmanTable table) {
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
  }

  private int entry(int index, int length) {
    int symbol = table.symbol(index);
    return symbol << 16 | length << 8 | (length + (symbol & 15));
  }

  /** The entry of a code longer than the look-up takes; 0 if the bits are no code. */
  int longEntry(long word) {
    int bits = (int) (word >>> 48);
    for (int length = LOOK_BITS + 1; length <= LONGEST; length++) {
      if (bits < limit[length]) {
        return entry((bits >>> (LONGEST - length)) + offset[length], length);
      }
    }
    return 0;
  }
}
