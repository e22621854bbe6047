package org.vestibule.jpeg;

import java.util.List;
import org.vestibule.base.Turn;

/** All of the source's coefficients, compared one by one. */
final class DenseProofBlocks implements ProofBlocks {

  /**
   * For each zigzag position, the first one beyond its diagonal. An exchange of rows and columns
   * leaves each diagonal where it is, so that what is zero from there on must be so in both blocks.
   */
  private static final int[] DIAGONAL_END = new int[64];

  static {
    for (int position = 63; position >= 0; position--) {
      boolean ends = position == 63 || diagonal(position) != diagonal(position + 1);
      DIAGONAL_END[position] = ends ? position + 1 : DIAGONAL_END[position + 1];
    }
  }

  private final List<ComponentBlocks> components;
  private final int[] stored = new int[64];

  /** All bits where the sign is the other, which negates by the two's complement; else none. */
  private final int[] negated = new int[64];

  private int touched;

  DenseProofBlocks(Coefficients source, Turn turn) {
    this.components = source.components();
    ProofTurn rule = new ProofTurn(turn);
    for (int position = 0; position < 64; position++) {
      stored[position] = rule.stored(position);
      negated[position] = rule.isNegated(position) ? -1 : 0;
    }
  }

  @Override
  public void soon(int component, int storedRow, int storedColumn) {
    ComponentBlocks blocks = components.get(component);
    int from = blocks.base(storedRow, storedColumn);
    touched += blocks.values[from] + blocks.values[from + 32];
  }

  /** Says nothing; that it could be asked for keeps what was read from being left out. */
  int touched() {
    return touched;
  }

  @Override
  public boolean holds(int component, int storedRow, int storedColumn, short[] values, int base) {
    ComponentBlocks blocks = components.get(component);
    int from = blocks.base(storedRow, storedColumn);
    short[] mine = blocks.values;
    int[] places = stored;
    int[] flips = negated;
    int difference = 0;
    int last = 63;
    while (last >= 0 && values[base + last] == 0) {
      last--;
    }
    int end = last < 0 ? 0 : DIAGONAL_END[last];
    for (int position = end; position < 64; position++) {
      difference |= mine[from + position];
    }
    for (int position = 0; position < end; position++) {
      int flip = flips[position];
      difference |= values[base + position] ^ ((mine[from + places[position]] ^ flip) - flip);
    }
    return difference == 0;
  }

  private static int diagonal(int position) {
    return Zigzag.natural(position) / 8 + Zigzag.natural(position) % 8;
  }
}
