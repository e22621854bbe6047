package org.vestibule.jpeg;

import java.util.Arrays;

/**
 * Reads blocks of baseline and extended sequential scans into tokens (ITU-T T.81 F.2.2). This and
 * {@link ScanWriter} are where the time goes: state lives in locals, nothing is allocated for a
 * block, and a value is never computed where its bits will do.
 */
final class SequentialTokens {

  private static final int MOST_DC_BITS = 11;
  private static final int MOST_AC_BITS = 10;

  private static final int ZERO_RUN = 0xF0;

  /**
   * Bits that can be read of a word before it may hold less than a code and its value, which are 31
   * at most.
   */
  private static final int WHOLE = 57 - 31;

  /** A position past all that a damaged block can reach. */
  private static final int ENDED = 1000;

  private static final int[] TRANSPOSED = ScatteredBlock.placesFor(true);

  private final ScanBits in;
  private final Tokens out;
  private final boolean transposes;
  private final int[] predictions;

  private final ScatteredBlock block = new ScatteredBlock();

  /** Counts of what is not kept. */
  private final int[] forgotten = new int[256];

  private final int[] forgottenPairs = new int[PairTable.ENTRIES];

  /** Set once a value was met that a baseline picture can't carry. */
  boolean beyondBaseline;

  SequentialTokens(ScanBits in, Tokens out, boolean transposes, int parts) {
    this.in = in;
    this.out = out;
    this.transposes = transposes;
    this.predictions = new int[parts];
  }

  /** Forgets predictions, as at the start of every restart interval. */
  void reset() {
    Arrays.fill(predictions, 0);
  }

  /** Reads a block and keeps it as this block of the plane. */
  void block(TokenPlane plane, int index, int part, LookupTable dc, LookupTable ac)
      throws JpegFault {
    in.ready();
    plane.dc[index] = dc(part, dc);
    plane.place[index] = out.begin();
    if (transposes) {
      singles(ac, TRANSPOSED, plane.acCounts);
    } else {
      pairs(ac, plane.pairCounts, plane.acCounts);
    }
  }

  /** Reads a block that only fills up an MCU, or that was cropped away, and forgets it. */
  void passed(int part, LookupTable dc, LookupTable ac) throws JpegFault {
    in.ready();
    dc(part, dc);
    out.begin();
    int kept = out.next;
    pairs(ac, forgottenPairs, forgotten);
    out.next = kept;
  }

  private short dc(int part, LookupTable table) throws JpegFault {
    long word = in.word(in.at);
    int entry = table.entry(word);
    int size = entry >>> 24;
    if (entry == 0 || size > 15) {
      throw damaged("no such code");
    }
    if (size > 0) {
      int bits = (int) (word << (entry >>> 8) >>> -size);
      // Negative differences come as their magnitude's complement (T.81 F.2.2.1, EXTEND).
      predictions[part] += LookupTable.value(size, bits);
      beyondBaseline |= size > MOST_DC_BITS;
    }
    in.at += entry & 31;
    short value = (short) predictions[part];
    if (value != predictions[part]) {
      throw damaged("a brightness out of range");
    }
    return value;
  }

  /** Two coefficients at a time, as long as they can't be the block's last. */
  private void pairs(LookupTable table, int[] pairCounts, int[] counts) throws JpegFault {
    long[] look = table.pairs;
    short[] chunk = out.chunk;
    int next = out.next;
    int at = in.at;
    int reload = at + WHOLE;
    long word = in.word(at);
    int position = 0;
    do {
      if (at > reload) {
        word = in.word(at);
        reload = at + WHOLE;
      }
      int index = (int) (word >>> PairTable.SHIFT);
      long pair = look[index];
      int after = position + ((int) pair >>> 8 & 0xFF);
      if (pair != 0 && after < 63) {
        word <<= pair;
        at += (int) pair & 63;
        position = after;
        pairCounts[index]++;
        chunk[next] = (short) (pair >>> 16);
        chunk[next + 1] = (short) (pair >>> 32);
        next += (int) (pair >>> 48) & 3;
        if (pair < 0) {
          in.at = at;
          end(chunk, next - 1, counts);
          return;
        }
      } else {
        int entry = table.entry(word);
        int symbol = entry >>> 24;
        int size = symbol & 15;
        int bits = (int) (word << (entry >>> 8) >>> -size);
        position += (symbol >>> 4) + 1;
        counts[symbol]++;
        if (size > Tokens.MOST_BITS) {
          beyondBaseline |= size > MOST_AC_BITS;
          chunk[next++] = (short) (symbol << 8);
          chunk[next++] = (short) bits;
        } else if (size > 0) {
          chunk[next++] = (short) (symbol << 8 | bits);
        } else {
          // The end of a block is in the pairs unless its code is longer than they take.
          if (symbol != ZERO_RUN) {
            requireEnd(entry);
            in.at = at + (entry & 63);
            end(chunk, next, counts);
            return;
          }
          chunk[next++] = Tokens.ZERO_RUN;
        }
        word <<= entry;
        at += entry & 63;
      }
    } while (position < 63);
    in.at = at;
    if (position > 63 || chunk[next - 1] == Tokens.ZERO_RUN) {
      throw damaged("a run goes past the end of a block");
    }
    chunk[next++] = Tokens.FULL;
    out.next = next;
  }

  /** Ends a block; zero runs right before its end say nothing and are left out. */
  private void end(short[] chunk, int after, int[] counts) {
    int next = after;
    while (next > out.next && chunk[next - 1] == Tokens.ZERO_RUN) {
      next--;
      counts[ZERO_RUN]--;
    }
    chunk[next++] = Tokens.END;
    out.next = next;
  }

  private void requireEnd(int entry) throws JpegFault {
    if (entry == 0 || entry >>> 24 != 0) {
      throw damaged(entry == 0 ? "no such code" : "no such run");
    }
  }

  /** One coefficient at a time, each put down at its place. */
  private void singles(LookupTable table, int[] places, int[] counts) throws JpegFault {
    int[] values = block.values;
    int at = in.at;
    int reload = at + WHOLE;
    long word = in.word(at);
    int position = 0;
    long filled = 0;
    do {
      if (at > reload) {
        word = in.word(at);
        reload = at + WHOLE;
      }
      int entry = table.entry(word);
      int size = entry >>> 24 & 15;
      if (size != 0) {
        position += (entry >>> 28) + 1;
        int place = places[position];
        values[place] = size << 16 | (int) (word << (entry >>> 8) >>> -size);
        filled |= 1L << place;
      } else if (entry >>> 24 == ZERO_RUN) {
        position += 16;
      } else {
        requireEnd(entry);
        position = ENDED;
      }
      word <<= entry;
      at += entry & 63;
    } while (position < 63);
    in.at = at;
    if (position > 63 && position < ENDED) {
      throw damaged("a run goes past the end of a block");
    }
    block.filled = filled;
    block.write(out, counts);
    beyondBaseline |= block.largestSize > MOST_AC_BITS;
  }

  private JpegFault damaged(String what) {
    return JpegFault.damaged(
        "the picture's data is damaged near byte " + in.position() + " (" + what + ")");
  }
}
