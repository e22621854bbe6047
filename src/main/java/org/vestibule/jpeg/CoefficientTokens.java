package org.vestibule.jpeg;

/** Writes the coefficients of a decoded picture as tokens; its bytes are never kept as they are. */
final class CoefficientTokens {

  private static final int MOST_BITS = 15;

  private final Tokens out;

  /** Zigzag position, in the stored block, of each position of the tokens' block. */
  private final int[] from = new int[64];

  private CoefficientTokens(Tokens out, boolean transposed) {
    this.out = out;
    for (int i = 0; i < 64; i++) {
      int natural = Zigzag.natural(i);
      from[i] = transposed ? Zigzag.position(natural & 7, natural >> 3) : i;
    }
  }

  static TokenPicture of(Coefficients source, boolean transposed) throws JpegFault {
    TokenPicture picture = new TokenPicture(source.structure(), transposed);
    CoefficientTokens writer = new CoefficientTokens(picture.tokens, transposed);
    for (int i = 0; i < picture.planes.size(); i++) {
      writer.plane(source.components().get(i), picture.planes.get(i));
    }
    return picture;
  }

  private void plane(ComponentBlocks blocks, TokenPlane plane) throws JpegFault {
    plane.quantisation = blocks.quantisation;
    int index = 0;
    for (int row = 0; row < blocks.grid.high(); row++) {
      for (int column = 0; column < blocks.grid.wide(); column++) {
        int base = blocks.base(row, column);
        plane.dc[index] = blocks.values[base];
        plane.place[index++] = out.begin();
        block(blocks.values, base, plane.acCounts);
      }
    }
  }

  private void block(short[] values, int base, int[] counts) throws JpegFault {
    int last = 0;
    for (int position = 1; position < 64; position++) {
      int value = values[base + from[position]];
      if (value != 0) {
        int run = position - last - 1;
        while (run > 15) {
          run -= 16;
          counts[0xF0]++;
          out.chunk[out.next++] = Tokens.ZERO_RUN;
        }
        value(run, value, counts);
        last = position;
      }
    }
    if (last < 63) {
      counts[0]++;
    }
    out.chunk[out.next++] = last < 63 ? Tokens.END : Tokens.FULL;
  }

  /** Negative values are written as their magnitude's complement (T.81 F.1.2.1). */
  private void value(int run, int value, int[] counts) throws JpegFault {
    int size = 32 - Integer.numberOfLeadingZeros(Math.abs(value));
    if (size > MOST_BITS) {
      throw JpegFault.damaged("the picture's data is damaged (a value out of range)");
    }
    int bits = (value < 0 ? value - 1 : value) & ((1 << size) - 1);
    int symbol = run << 4 | size;
    counts[symbol]++;
    if (size > Tokens.MOST_BITS) {
      out.chunk[out.next++] = (short) (symbol << 8);
      out.chunk[out.next++] = (short) bits;
    } else {
      out.chunk[out.next++] = (short) (symbol << 8 | bits);
    }
  }
}
