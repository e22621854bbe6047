package org.vestibule.jpeg;

import org.jspecify.annotations.Nullable;

/** Compares the result's blocks, row by row, with those of the source that they should be. */
final class ProofRows implements RowSink {

  private final ProofBlocks source;
  private final ProofFrame frames;
  private @Nullable String difference;

  ProofRows(ProofBlocks source, ProofFrame frames) {
    this.source = source;
    this.frames = frames;
  }

  @Override
  public void row(int component, int blockRow, ComponentBlocks blocks) {
    int wide = frames.blocksWide(component);
    for (int column = 0; column < wide && difference == null; column++) {
      int[] stored = frames.stored(component, blockRow, column);
      if (stored == null
          || !source.holds(
              component, stored[0], stored[1], blocks.values, blocks.base(blockRow, column))) {
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

  /** The first block that differs, or null. */
  @Nullable String difference() {
    return difference;
  }
}
