package org.vestibule.jpeg;

import java.util.Arrays;

/**
 * Reads blocks of sequential scans only for what a first look needs of them: the lowest frequencies
 * and the energy of the fine ones. Takes exactly the blocks that {@link SequentialTokens} takes.
 */
final class LookedBlock {

  private static final int MOST_AC_BITS = 10;
  private static final int ZERO_RUN = 0xF0;

  /** The last position that a sample at a quarter depends on. */
  private static final int LOWEST = 4;

  /**
   * Bits that can be read of a word before it may hold less than a code and its value, which are 31
   * at most.
   */
  private static final int WHOLE = 57 - 31;

  private final ScanBits in;

  /** Quantised values by zigzag position; only those up to {@link #LOWEST} are right. */
  final int[] low = new int[64];

  /** Sum of the squares of the fine frequencies, dequantised. */
  long energy;

  /** Set once a value was met that a baseline picture can't carry. */
  boolean beyondBaseline;

  LookedBlock(ScanBits in) {
    this.in = in;
  }

  /**
   * Reads a block's AC coefficients.
   *
   * @param fine quantisation steps of the fine frequencies, 0 at all others
   */
  void read(LookupTable table, int[] fine) throws JpegFault {
    int[] values = low;
    Arrays.fill(values, 0, LOWEST + 1, 0);
    long[] look = table.looks;
    long squares = 0;
    int at = in.at;
    int reload = at + WHOLE;
    long word = in.word(at);
    int position = 0;
    do {
      if (at > reload) {
        word = in.word(at);
        reload = at + WHOLE;
      }
      long pair = look[(int) (word >>> PairTable.SHIFT)];
      int after = position + ((int) pair >>> 8 & 0xFF);
      if (pair != 0 && after < 63) {
        word <<= pair;
        at += (int) pair & 63;
        int between = position + ((int) (pair >>> 16) & 0xFF);
        int first = (short) (pair >>> 24);
        int second = (short) (pair >>> 40);
        // Where there is no second, it is 0 and adds nothing to whatever stands there.
        values[between] += first;
        values[after] += second;
        first *= fine[between];
        second *= fine[after];
        squares += (long) first * first + (long) second * second;
        position = after;
        if (pair < 0) {
          in.at = at;
          energy = squares;
          return;
        }
      } else {
        int entry = table.entry(word);
        int symbol = entry >>> 24;
        int size = symbol & 15;
        int bits = (int) (word << (entry >>> 8) >>> -size);
        word <<= entry;
        at += entry & 63;
        position += (symbol >>> 4) + 1;
        if (size > 0 && position <= 63) {
          beyondBaseline |= size > MOST_AC_BITS;
          int value = LookTable.value(size, bits);
          values[position] += value;
          value *= fine[position];
          squares += (long) value * value;
        } else if (symbol != ZERO_RUN || position >= 63) {
          if (entry == 0 || symbol != 0) {
            throw JpegFault.damaged(
                "the picture's data is damaged near byte "
                    + in.position()
                    + " (no such code or run)");
          }
          in.at = at;
          energy = squares;
          return;
        }
      }
    } while (position < 63);
    in.at = at;
    energy = squares;
  }
}
