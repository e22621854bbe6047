package org.vestibule.jpeg;

import java.util.Arrays;

/**
 * A Huffman table: its definition as in a DHT segment, and look-ups for decoding (T.81 Annex C,
 * F.2).
 */
final class HuffmanTable {

  private static final int LOOK_BITS = 9;
  private static final int LOOK_SHIFT = 16 - LOOK_BITS;
  private static final int LONGEST = 16;

  /** Number of codes of each length 1 to 16; index 0 is unused. */
  private final int[] counts;

  private final int[] symbols;

  /** Entries by the next nine bits; 0 where the code is longer. */
  private final int[] look = new int[1 << LOOK_BITS];

  /** One past the largest code of each length, shifted to 16 bits. */
  private final int[] limit = new int[LONGEST + 1];

  private final int[] symbolOffset = new int[LONGEST + 1];

  HuffmanTable(int[] counts, int[] symbols) throws JpegFault {
    this.counts = counts.clone();
    this.symbols = symbols.clone();
    int code = 0;
    int index = 0;
    for (int length = 1; length <= LONGEST; length++) {
      symbolOffset[length] = index - code;
      if (code + counts[length] > 1 << length) {
        throw JpegFault.damaged(
            "a Huffman table has more codes of " + length + " bits than there can be");
      }
      fillLook(length, code, index);
      code += counts[length];
      index += counts[length];
      limit[length] = code << (LONGEST - length);
      code <<= 1;
    }
  }

  private void fillLook(int length, int firstCode, int firstIndex) {
    if (length > LOOK_BITS) {
      return;
    }
    int span = 1 << (LOOK_BITS - length);
    for (int i = 0; i < counts[length]; i++) {
      int from = (firstCode + i) * span;
      Arrays.fill(look, from, from + span, entry(length, symbols[firstIndex + i]));
    }
  }

  /** The next symbol, or -1 if the bits are no code of this table. */
  int next(BitReader in) {
    int entry = entry(in.peek16());
    if (entry == 0) {
      return -1;
    }
    in.skip(length(entry));
    return entry & 0xFF;
  }

  /**
   * The code that 16 bits start with; 0 if with none. The lowest eight bits are its symbol, the
   * next eight its length, the next its length together with that of the value that follows it.
   */
  int entry(int bits) {
    int entry = look[bits >>> LOOK_SHIFT];
    return entry != 0 ? entry : longEntry(bits);
  }

  private static int entry(int length, int symbol) {
    return (length + (symbol & 15)) << 16 | length << 8 | symbol;
  }

  /** The length of an entry's code. */
  static int length(int entry) {
    return entry >>> 8 & 0xFF;
  }

  private int longEntry(int bits) {
    for (int length = LOOK_BITS + 1; length <= LONGEST; length++) {
      if (bits < limit[length]) {
        return entry(length, symbols[(bits >>> (LONGEST - length)) + symbolOffset[length]]);
      }
    }
    return 0;
  }

  int count(int length) {
    return counts[length];
  }

  int symbolCount() {
    return symbols.length;
  }

  int symbol(int index) {
    return symbols[index];
  }

  boolean sameAs(HuffmanTable other) {
    return Arrays.equals(counts, other.counts) && Arrays.equals(symbols, other.symbols);
  }
}
