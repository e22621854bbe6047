package org.vestibule.jpeg;

import java.util.Arrays;

/**
 * Turns blocks and breaks them into the symbols of a sequential scan (ITU-T T.81 F.1.2). What
 * becomes of the symbols, counting or writing, is the subclass's business.
 */
abstract class BlockCoder {

  private static final int MOST_DC_BITS = 11;
  private static final int MOST_AC_BITS = 10;
  private static final int ZERO_RUN = 0xF0;
  private static final int END_OF_BLOCK = 0;

  private final BlockTurn turn;
  private final int[] predictions;

  BlockCoder(BlockTurn turn, int components) {
    this.turn = turn;
    this.predictions = new int[components];
  }

  /** A DC symbol and its additional bits, of which the lowest {@code size} count. */
  abstract void dc(int component, int size, int bits);

  /** An AC symbol and its additional bits, of which the lowest {@code symbol & 15} count. */
  abstract void ac(int component, int symbol, int bits);

  /** Starts a scan. */
  void start() {
    Arrays.fill(predictions, 0);
  }

  /** A block that only fills up an MCU: as bright as the one before, without detail. */
  final void padding(int component) {
    dc(component, 0, 0);
    ac(component, END_OF_BLOCK, 0);
  }

  /** The block whose DC coefficient stands at {@code base}. */
  final void block(int component, short[] values, int base) throws JpegFault {
    int[] from = turn.from;
    int[] sign = turn.sign;
    int difference = values[base] - predictions[component];
    predictions[component] = values[base];
    dc(component, size(difference, MOST_DC_BITS), bits(difference));
    int last = 0;
    for (int position = 1; position < 64; position++) {
      int value = values[base + from[position]];
      if (value != 0) {
        int run = position - last - 1;
        while (run > 15) {
          ac(component, ZERO_RUN, 0);
          run -= 16;
        }
        int turned = value * sign[position];
        ac(component, run << 4 | size(turned, MOST_AC_BITS), bits(turned));
        last = position;
      }
    }
    if (last < 63) {
      ac(component, END_OF_BLOCK, 0);
    }
  }

  /** Negative values are written as their magnitude's complement (T.81 F.1.2.1). */
  private static int bits(int value) {
    return value < 0 ? value - 1 : value;
  }

  private static int size(int value, int most) throws JpegFault {
    int size = 32 - Integer.numberOfLeadingZeros(Math.abs(value));
    if (size > most) {
      throw JpegFault.unsuited(
          "the picture holds a value of "
              + size
              + " bits, more than the "
              + most
              + " that a baseline JPEG can carry",
          "export the photo again as an ordinary JPEG");
    }
    return size;
  }
}
