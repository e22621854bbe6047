package org.vestibule.jpeg;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Compares the result's blocks, row by row, with those of the source that they should be. */
final class ProofRows implements RowSink {

  /** So many blocks are told of before they are asked for. */
  private static final int AHEAD = 16;

  private final ProofBlocks source;
  private @Nullable String difference;

  /** By component, where each row and each column of the result's blocks stands in the source. */
  private final List<int[]> rows = new ArrayList<>();

  private final List<int[]> columns = new ArrayList<>();
  private final boolean swaps;

  ProofRows(ProofBlocks source, ProofFrame frames) {
    this.source = source;
    this.swaps = frames.swaps();
    for (int component = 0; component < frames.components(); component++) {
      rows.add(frames.stored(component, true));
      columns.add(frames.stored(component, false));
    }
  }

  @Override
  public void row(int component, int blockRow, ComponentBlocks blocks) {
    int[] across = columns.get(component);
    int down = rows.get(component)[blockRow];
    for (int column = 0; column < across.length && difference == null; column++) {
      if (column % AHEAD == 0) {
        soon(component, down, across, column);
      }
      boolean whole = down >= 0 && across[column] >= 0;
      if (!whole
          || !source.holds(
              component,
              swaps ? across[column] : down,
              swaps ? down : across[column],
              blocks.values,
              blocks.base(blockRow, column))) {
        difference =
            "component "
                + (component + 1)
                + " differs in block row "
                + blockRow
                + ", column "
                + column;
      }
    }
  }

  private void soon(int component, int down, int[] across, int first) {
    for (int column = first; column < Math.min(first + AHEAD, across.length); column++) {
      if (down >= 0 && across[column] >= 0) {
        source.soon(component, swaps ? across[column] : down, swaps ? down : across[column]);
      }
    }
  }

  /** The first block that differs, or null. */
  @Nullable String difference() {
    return difference;
  }
}
