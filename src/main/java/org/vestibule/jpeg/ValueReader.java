package org.vestibule.jpeg;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Reads blocks of sequential scans as values, the proof's way: what a first look needs of them, and
 * what they weigh ({@link BlockWeights}). Shares nothing with the engine's reading of codes.
 *
 * <p>Here a first look and a proof spend their time. The bits stand in locals; they are filled up
 * once for so many looks into a table as can't use them up, without asking how many are left.
 */
final class ValueReader {

  /** After a fill there are 56 bits or more; a look takes at most 11 and the first may be a DC. */
  private static final int LOOKS = 4;

  /** The same in a wide table, where a look takes at most 13. */
  private static final int WIDE_LOOKS = 3;

  private static final int ZERO_RUN = 0xF0;
  private static final int[] NOT_FINE = new int[64];

  /** The last position that a sample at a quarter depends on. */
  private static final int LOWEST = 4;

  private final BitReader in;
  private final int[] predictions;

  /** The block's DC coefficient. */
  int dc;

  /** Quantised values by zigzag position; only those of 1 to {@link #LOWEST} are right. */
  final int[] low = new int[64];

  /** Sum of the squares of the fine frequencies, dequantised, if it was asked for. */
  long energy;

  /** What the block weighs, if it was asked for. */
  long firstWeight;

  long secondWeight;

  /** Set once a value was met that a baseline picture can't carry. */
  boolean beyondBaseline;

  /**
   * For one scan.
   *
   * @param parts its components
   */
  ValueReader(BitReader in, int parts) {
    this.in = in;
    this.predictions = new int[parts];
  }

  /** Forgets predictions, as at the start of every restart interval. */
  void reset() {
    Arrays.fill(predictions, 0);
  }

  /**
   * Reads a block.
   *
   * @param part place of its component in the scan
   * @param fine quantisation steps of the fine frequencies, 0 at all others; null for no energy
   * @param acTable a wide one where the block is weighed
   * @param weights what its coefficients weigh; null for no weight
   */
  void block(
      int part,
      ValueTable dcTable,
      ValueTable acTable,
      int @Nullable [] fine,
      @Nullable BlockWeights weights)
      throws JpegFault {
    in.fill();
    dc(part, dcTable);
    int[] steps = fine == null ? NOT_FINE : fine;
    if (weights == null) {
      looked(acTable, steps);
    } else {
      weighed(acTable, steps, weights);
    }
  }

  private void dc(int part, ValueTable table) throws JpegFault {
    long found = table.look[(int) (in.bits >>> ValueTable.SHIFT)];
    int difference = (short) (found >>> 24);
    if (found == 0) {
      int entry = table.codes.entry((int) (in.bits >>> 48));
      int size = entry & 0xFF;
      if (entry == 0 || size > 15) {
        throw BlockDecoder.damaged(in, "no such code");
      }
      beyondBaseline |= size > ValueTable.MOST_DC_BITS;
      difference = ValueTable.value(entry, in.bits);
      in.skip(entry >>> 16);
      in.fill();
    } else {
      in.skip((int) found & 63);
    }
    predictions[part] += difference;
    dc = predictions[part];
    if (dc != (short) dc) {
      throw BlockDecoder.damaged(in, "a brightness out of range");
    }
  }

  /** Reads what a first look needs. */
  private void looked(ValueTable table, int[] fine) throws JpegFault {
    long[] look = table.look;
    int[] values = low;
    Arrays.fill(values, 1, LOWEST + 1, 0);
    long squares = 0;
    long bits = in.bits;
    int count = in.count;
    int position = 0;
    while (true) {
      for (int i = 0; i < LOOKS; i++) {
        long found = look[(int) (bits >>> ValueTable.SHIFT)];
        int after = position + ((int) found >>> 8 & 0xFF);
        if (after >= 63) {
          in.bits = bits;
          in.count = count;
          found = single(table.codes, position);
          bits = in.bits;
          count = in.count;
          after = position + ((int) found >>> 8 & 0xFF);
          i = -1;
        }
        bits <<= found;
        count -= (int) found & 63;
        int between = position + ((int) (found >>> 16) & 0xFF);
        int first = (short) (found >>> 24);
        int fineFirst = first * fine[between];
        if (found < 0) {
          // With the end there comes one value, or 0 for none, which adds to what stands there.
          values[between] += first;
          in.bits = bits;
          in.count = count;
          energy = squares + (long) fineFirst * fineFirst;
          return;
        }
        int second = (short) (found >>> 40);
        // Where there is no second, a zero is written; the first then stands at the same place.
        values[after] = second;
        values[between] = first;
        int fineSecond = second * fine[after];
        squares += (long) fineFirst * fineFirst + (long) fineSecond * fineSecond;
        position = after;
      }
      long eight = in.plainEight();
      if (eight != 0) {
        bits |= eight >>> count;
        in.at += (63 - count) >>> 3;
        count |= 56;
      } else {
        in.bits = bits;
        in.count = count;
        in.byByte();
        bits = in.bits;
        count = in.count;
      }
    }
  }

  /** The same, and what the block weighs. */
  private void weighed(ValueTable table, int[] fine, BlockWeights weights) throws JpegFault {
    long[] look = table.look;
    int[] values = low;
    Arrays.fill(values, 1, LOWEST + 1, 0);
    long squares = 0;
    long[] firsts = weights.first;
    long[] seconds = weights.second;
    long one = dc * firsts[0];
    long two = dc * seconds[0];
    long bits = in.bits;
    int count = in.count;
    int position = 0;
    while (true) {
      for (int i = 0; i < WIDE_LOOKS; i++) {
        long found = look[(int) (bits >>> ValueTable.WIDE_SHIFT)];
        int after = position + ((int) found >>> 8 & 0xFF);
        if (after >= 63) {
          in.bits = bits;
          in.count = count;
          found = single(table.codes, position);
          bits = in.bits;
          count = in.count;
          after = position + ((int) found >>> 8 & 0xFF);
          i = -1;
        }
        bits <<= found;
        count -= (int) found & 63;
        int between = position + ((int) (found >>> 16) & 0xFF);
        long first = (short) (found >>> 24);
        one += first * firsts[between];
        two += first * seconds[between];
        long fineFirst = first * fine[between];
        squares += fineFirst * fineFirst;
        if (found < 0) {
          values[between] += (int) first;
          energy = squares;
          in.bits = bits;
          in.count = count;
          firstWeight = one;
          secondWeight = two;
          return;
        }
        long second = (short) (found >>> 40);
        one += second * firsts[after];
        two += second * seconds[after];
        values[after] = (int) second;
        values[between] = (int) first;
        long fineSecond = second * fine[after];
        squares += fineSecond * fineSecond;
        position = after;
      }
      long eight = in.plainEight();
      if (eight != 0) {
        bits |= eight >>> count;
        in.at += (63 - count) >>> 3;
        count |= 56;
      } else {
        in.bits = bits;
        in.count = count;
        in.byByte();
        bits = in.bits;
        count = in.count;
      }
    }
  }

  /**
   * Reads one symbol and its value: a long code, or what may be the last, since a block that is
   * full has no code for its end. Gives an entry that says that no bits are left to take.
   */
  private long single(HuffmanTable codes, int position) throws JpegFault {
    in.fill();
    int entry = codes.entry((int) (in.bits >>> 48));
    int symbol = entry & 0xFF;
    int size = symbol & 15;
    if (entry == 0 || (size == 0 && symbol != 0 && symbol != ZERO_RUN)) {
      throw BlockDecoder.damaged(in, entry == 0 ? "no such code" : "no such run");
    }
    int steps = symbol == 0 ? 0 : (symbol >>> 4) + 1;
    if (position + steps > (symbol == ZERO_RUN ? 62 : 63)) {
      throw BlockDecoder.damaged(in, "a run goes past the end of a block");
    }
    beyondBaseline |= size > ValueTable.MOST_AC_BITS;
    long value = ValueTable.value(entry, in.bits);
    in.skip(entry >>> 16);
    in.fill();
    boolean ends = symbol == 0 || position + steps == 63;
    return (ends ? Long.MIN_VALUE : 0) | (steps * ValueTable.STEPS + ((value & 0xFFFF) << 24));
  }
}
