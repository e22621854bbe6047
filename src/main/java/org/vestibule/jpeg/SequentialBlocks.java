package org.vestibule.jpeg;

import java.util.Arrays;

/** Decodes blocks of baseline and extended sequential scans (ITU-T T.81 F.2.2). */
final class SequentialBlocks implements BlockDecoder {

  private static final int MOST_BITS = 15;

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
    HuffmanTable table = ac[part];
    int position = 1;
    while (position < 64) {
      int symbol = table.next(in);
      int size = symbol & 15;
      if (size != 0 && symbol >= 0) {
        position += symbol >> 4;
        if (position > 63) {
          throw BlockDecoder.damaged(in, "a run goes past the end of a block");
        }
        values[base + position] = (short) in.extended(size);
        position++;
      } else if (symbol == 0) {
        return;
      } else if (symbol == 0xF0) {
        position += 16;
      } else {
        throw BlockDecoder.damaged(in, symbol < 0 ? "no such code" : "no such run");
      }
    }
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
