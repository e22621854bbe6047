package org.vestibule.jpeg;

import java.util.Arrays;

/** Makes the Huffman table that codes given symbol counts in the fewest bits (ITU-T T.81 K.2). */
final class OptimalHuffman {

  private static final int SYMBOLS = 256;
  private static final int LONGEST = 16;

  /** Counts of all symbols and of one more, whose code of all ones stays unused. */
  private final long[] weights = new long[SYMBOLS + 1];

  private final int[] lengths = new int[SYMBOLS + 1];

  /** The next symbol of the same subtree, or -1. */
  private final int[] next = new int[SYMBOLS + 1];

  private OptimalHuffman(int[] counts) {
    for (int symbol = 0; symbol < SYMBOLS; symbol++) {
      weights[symbol] = counts[symbol];
    }
    weights[SYMBOLS] = 1;
    Arrays.fill(next, -1);
  }

  static HuffmanTable table(int[] counts) throws JpegFault {
    OptimalHuffman optimal = new OptimalHuffman(counts);
    optimal.merge();
    int[] perLength = optimal.shortened();
    return new HuffmanTable(perLength, optimal.symbols(counts));
  }

  /**
   * Joins the two lightest subtrees until one is left; each joining lengthens their codes by one.
   */
  private void merge() {
    int light = lightest(-1);
    int second = lightest(light);
    while (second >= 0) {
      weights[light] += weights[second];
      weights[second] = 0;
      lengthen(light);
      append(light, second);
      lengthen(second);
      light = lightest(-1);
      second = lightest(light);
    }
  }

  /** The lightest subtree, the highest symbol among equals; -1 if there is none. */
  private int lightest(int except) {
    int found = -1;
    for (int symbol = 0; symbol <= SYMBOLS; symbol++) {
      if (symbol != except
          && weights[symbol] > 0
          && (found < 0 || weights[symbol] <= weights[found])) {
        found = symbol;
      }
    }
    return found;
  }

  private void lengthen(int first) {
    for (int symbol = first; symbol >= 0; symbol = next[symbol]) {
      lengths[symbol]++;
    }
  }

  private void append(int first, int second) {
    int last = first;
    while (next[last] >= 0) {
      last = next[last];
    }
    next[last] = second;
  }

  /**
   * Numbers of codes per length, none longer than 16 bits, without the unused code (Figure K.3).
   */
  private int[] shortened() {
    int[] perLength = new int[SYMBOLS + 2];
    for (int length : lengths) {
      if (length > 0) {
        perLength[length]++;
      }
    }
    for (int length = SYMBOLS + 1; length > LONGEST; length--) {
      while (perLength[length] > 0) {
        int shorter = length - 2;
        while (perLength[shorter] == 0) {
          shorter--;
        }
        perLength[length] -= 2;
        perLength[length - 1]++;
        perLength[shorter + 1] += 2;
        perLength[shorter]--;
      }
    }
    int longest = LONGEST;
    while (longest > 0 && perLength[longest] == 0) {
      longest--;
    }
    if (longest > 0) {
      perLength[longest]--;
    }
    return Arrays.copyOf(perLength, LONGEST + 1);
  }

  /** The symbols that occur, by the length of their codes (Figure K.4). */
  private int[] symbols(int[] counts) {
    int[] sorted = new int[SYMBOLS];
    int size = 0;
    for (int length = 1; length <= SYMBOLS; length++) {
      for (int symbol = 0; symbol < SYMBOLS; symbol++) {
        if (counts[symbol] > 0 && lengths[symbol] == length) {
          sorted[size++] = symbol;
        }
      }
    }
    return Arrays.copyOf(sorted, size);
  }
}
