package org.vestibule.jpeg;

import java.util.Arrays;

/** Reads blocks back from tokens, dequantised (ITU-T T.81 A.3.4), as far as they are wanted. */
final class TokenBlock {

  /** The block's coefficients in zigzag order; those after the last wanted are 0. */
  final int[] values = new int[64];

  private final Tokens tokens;
  private final int[] quantisation;
  private final int last;

  /**
   * For blocks of one component.
   *
   * @param quantisation steps in zigzag order of the tokens' blocks
   * @param last the last zigzag position wanted
   */
  TokenBlock(Tokens tokens, int[] quantisation, int last) {
    this.tokens = tokens;
    this.quantisation = quantisation.clone();
    this.last = last;
  }

  /** Reads a block into {@link #values}. */
  void read(TokenPlane plane, int index) {
    values[0] = plane.dc[index] * quantisation[0];
    if (last == 0) {
      return;
    }
    Arrays.fill(values, 1, last + 1, 0);
    int place = plane.place[index];
    short[] chunk = tokens.chunk(place);
    int at = Tokens.index(place);
    int position = 0;
    while (true) {
      int token = chunk[at++];
      int size = token >>> 8 & 15;
      position += (token >>> 12 & 15) + 1;
      if ((token >>> 8 & 0xFF) == 0 || position > last) {
        return;
      }
      if (size > 0) {
        int bits = size > Tokens.MOST_BITS ? chunk[at++] : token & 0xFF;
        values[position] = LookupTable.value(size, bits) * quantisation[position];
      }
    }
  }
}
