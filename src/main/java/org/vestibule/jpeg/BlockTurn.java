package org.vestibule.jpeg;

import org.vestibule.base.Turn;

/**
 * What a turn does inside a block: transposing exchanges rows and columns of coefficients, a
 * reflection changes the sign of the odd frequencies along its axis. Both follow from the cosines
 * of the forward DCT (ITU-T T.81 A.3.3), cos((2(7-x)+1)uπ/16) = (-1)^u cos((2x+1)uπ/16).
 */
final class BlockTurn {

  /** Zigzag position in the source of each zigzag position of the result. */
  final int[] from = new int[64];

  /** 1, or -1 where the sign changes. */
  final int[] sign = new int[64];

  BlockTurn(Turn turn) {
    for (int position = 0; position < 64; position++) {
      int row = Zigzag.natural(position) >> 3;
      int column = Zigzag.natural(position) & 7;
      from[position] =
          turn.swapsAxes() ? Zigzag.position(column, row) : Zigzag.position(row, column);
      boolean negated =
          (turn.flipsHorizontally() && column % 2 == 1) ^ (turn.flipsVertically() && row % 2 == 1);
      sign[position] = negated ? -1 : 1;
    }
  }

  /** A quantisation table, in zigzag order, as the turned blocks need it. */
  int[] quantisation(int[] source) {
    int[] turned = new int[64];
    for (int position = 0; position < 64; position++) {
      turned[position] = source[from[position]];
    }
    return turned;
  }
}
