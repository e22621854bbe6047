package org.vestibule.jpeg;

import java.util.List;
import org.vestibule.base.Turn;

/** All of the source's coefficients, compared one by one. */
final class DenseProofBlocks implements ProofBlocks {

  private final List<ComponentBlocks> components;
  private final int[] stored = new int[64];
  private final boolean[] negated = new boolean[64];

  DenseProofBlocks(Coefficients source, Turn turn) {
    this.components = source.components();
    ProofTurn rule = new ProofTurn(turn);
    for (int position = 0; position < 64; position++) {
      stored[position] = rule.stored(position);
      negated[position] = rule.isNegated(position);
    }
  }

  @Override
  public boolean holds(int component, int storedRow, int storedColumn, short[] values, int base) {
    ComponentBlocks blocks = components.get(component);
    int from = blocks.base(storedRow, storedColumn);
    for (int position = 0; position < 64; position++) {
      int value = blocks.values[from + stored[position]];
      if (values[base + position] != (negated[position] ? -value : value)) {
        return false;
      }
    }
    return true;
  }
}
