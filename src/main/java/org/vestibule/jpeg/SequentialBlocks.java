package org.vestibule.jpeg;

import java.util.Arrays;

/** Decodes blocks of baseline and extended sequential scans (ITU-T T.81 F.2.2). */
final class SequentialBlocks implements BlockDecoder {

  private static final int MOST_BITS = 15;
  private static final int ZERO_RUN = 0xF0;

  private final HuffmanTable[] dc;
  private final HuffmanTable[] ac;
  private final int[] predictions;

  SequentialBlocks(HuffmanTable[] dc, HuffmanTable[] ac) {
    this.dc = dc.clone();
    this.ac = ac.clone();
    this.predictions = new int[dc.length];
  }

  @Override
  public void reset() {
    Arrays.fill(predictions, 0);
  }

  @Override
  public void block(BitReader in, int part, short[] values, int base) throws JpegFault {
    values[base] = dc(in, dc[part], predictions, part);
    ac(in, ac[part], values, base);
  }

  /** The reader's bits stand in locals while a block is read: half of the proof is spent here. */
  private static void ac(BitReader in, HuffmanTable table, short[] values, int base)
      throws JpegFault {
    long bits = in.bits;
    int count = in.count;
    int position = 1;
    while (position < 64) {
      if (count < BitReader.CODE_AND_VALUE) {
        in.bits = bits;
        in.count = count;
        in.fill();
        bits = in.bits;
        count = in.count;
      }
      int entry = table.entry((int) (bits >>> 48));
      int value = (int) (bits << HuffmanTable.length(entry) >>> -(entry & 15));
      bits <<= entry >>> 16;
      count -= entry >>> 16;
      int symbol = entry & 0xFF;
      int size = symbol & 15;
      if (size != 0) {
        position += symbol >> 4;
        if (position > 63) {
          throw BlockDecoder.damaged(in, "a run goes past the end of a block");
        }
        // Negative values come as their magnitude's complement (T.81 F.2.2.1, EXTEND); which they
        // are is as good as chance, so that it is not asked but calculated.
        int negative = (value - (1 << (size - 1))) >> 31;
        values[base + position] = (short) (value + (negative & (1 - (1 << size))));
        position++;
      } else if (symbol == ZERO_RUN) {
        position += 16;
      } else if (symbol == 0 && entry != 0) {
        break;
      } else {
        throw BlockDecoder.damaged(in, entry == 0 ? "no such code" : "no such run");
      }
    }
    in.bits = bits;
    in.count = count;
    if (position > 64) {
      throw BlockDecoder.damaged(in, "a run goes past the end of a block");
    }
  }

  /** A DC coefficient from its difference to the one before. */
  static short dc(BitReader in, HuffmanTable table, int[] predictions, int part) throws JpegFault {
    int size = table.next(in);
    if (size < 0 || size > MOST_BITS) {
      throw BlockDecoder.damaged(in, "no such code");
    }
    if (size > 0) {
      predictions[part] += in.extended(size);
    }
    short value = (short) predictions[part];
    if (value != predictions[part]) {
      throw BlockDecoder.damaged(in, "a brightness out of range");
    }
    return value;
  }
}
