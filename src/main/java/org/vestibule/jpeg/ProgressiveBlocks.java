package org.vestibule.jpeg;

import java.util.Arrays;

/** Decodes blocks of progressive scans: first and refining, DC and AC (ITU-T T.81 G.1.2, G.2). */
final class ProgressiveBlocks implements BlockDecoder {

  private final ScanHeader header;
  private final HuffmanTable[] tables;
  private final int[] predictions;

  /** Blocks of the band that still end without further values. */
  private int endOfBandRun;

  /**
   * For one scan.
   *
   * @param tables the DC tables of a first DC scan, the AC table of an AC scan, else empty
   */
  ProgressiveBlocks(ScanHeader header, HuffmanTable[] tables) {
    this.header = header;
    this.tables = tables.clone();
    this.predictions = new int[header.components().size()];
  }

  @Override
  public void reset() {
    Arrays.fill(predictions, 0);
    endOfBandRun = 0;
  }

  @Override
  public void block(BitReader in, int part, short[] values, int base) throws JpegFault {
    if (header.spectralStart() == 0) {
      if (header.high() == 0) {
        firstDc(in, part, values, base);
      } else if (in.bits(1) != 0) {
        values[base] |= (short) (1 << header.low());
      }
    } else if (header.high() == 0) {
      firstAc(in, values, base);
    } else {
      refineAc(in, values, base);
    }
  }

  private void firstDc(BitReader in, int part, short[] values, int base) throws JpegFault {
    int value = SequentialBlocks.dc(in, tables[part], predictions, part);
    values[base] = shifted(in, value);
  }

  private short shifted(BitReader in, int value) throws JpegFault {
    int shifted = value << header.low();
    if ((short) shifted != shifted) {
      throw BlockDecoder.damaged(in, "a value out of range");
    }
    return (short) shifted;
  }

  private void firstAc(BitReader in, short[] values, int base) throws JpegFault {
    if (endOfBandRun > 0) {
      endOfBandRun--;
      return;
    }
    int position = header.spectralStart();
    while (position <= header.spectralEnd()) {
      int symbol = symbol(in);
      int run = symbol >> 4;
      int size = symbol & 15;
      if (size != 0) {
        position += run;
        requireInBand(in, position);
        values[base + position] = shifted(in, in.extended(size));
        position++;
      } else if (run < 15) {
        endOfBandRun = endOfBand(in, run) - 1;
        return;
      } else {
        position += 16;
      }
    }
  }

  private void refineAc(BitReader in, short[] values, int base) throws JpegFault {
    int position = header.spectralStart();
    while (endOfBandRun == 0 && position <= header.spectralEnd()) {
      int symbol = symbol(in);
      int run = symbol >> 4;
      int size = symbol & 15;
      if (size > 1) {
        throw BlockDecoder.damaged(in, "a refinement by more than one bit");
      }
      if (size == 0 && run < 15) {
        endOfBandRun = endOfBand(in, run);
      } else {
        int fresh = size == 0 ? 0 : (in.bits(1) == 0 ? -1 : 1) << header.low();
        position = refineRun(in, values, base, position, run);
        if (fresh != 0) {
          requireInBand(in, position);
          values[base + position] = (short) fresh;
        }
        position++;
      }
    }
    if (endOfBandRun > 0) {
      refineRun(in, values, base, position, 64);
      endOfBandRun--;
    }
  }

  /** Refines what is not zero and passes over {@code run} zeros; ends at the zero after them. */
  private int refineRun(BitReader in, short[] values, int base, int from, int run) {
    int bit = 1 << header.low();
    int zeros = run;
    for (int position = from; position <= header.spectralEnd(); position++) {
      int value = values[base + position];
      if (value == 0) {
        if (zeros == 0) {
          return position;
        }
        zeros--;
      } else if (in.bits(1) != 0 && (value & bit) == 0) {
        values[base + position] = (short) (value > 0 ? value + bit : value - bit);
      }
    }
    return header.spectralEnd() + 1;
  }

  private int symbol(BitReader in) throws JpegFault {
    int symbol = tables[0].next(in);
    if (symbol < 0) {
      throw BlockDecoder.damaged(in, "no such code");
    }
    return symbol;
  }

  private static int endOfBand(BitReader in, int bits) {
    return (1 << bits) + (bits == 0 ? 0 : in.bits(bits));
  }

  private void requireInBand(BitReader in, int position) throws JpegFault {
    if (position > header.spectralEnd()) {
      throw BlockDecoder.damaged(in, "a run goes past the end of its band");
    }
  }
}
