package org.vestibule.jpeg;

/**
 * Where the blocks of one component stand among the tokens: those that hold picture samples, row by
 * row as stored.
 */
final class TokenPlane {

  final JpegComponent component;
  final BlockGrid grid;

  /** The blocks whose tokens are kept; others are read and forgotten. */
  private BlockBox kept;

  /** The blocks' DC coefficients. */
  final short[] dc;

  /** The place of each block's first token. */
  final int[] place;

  /** How often each AC symbol stands in the component's tokens; complete after its scan. */
  final int[] acCounts = new int[256];

  /** How often each entry of a {@link PairTable} was taken. */
  final int[] pairCounts = new int[PairTable.ENTRIES];

  /** The quantisation table in zigzag order, as stored. */
  int[] quantisation = new int[0];

  TokenPlane(JpegFrame frame, JpegComponent component) {
    this.component = component;
    this.grid = BlockGrid.of(frame, component);
    int blocks = Math.multiplyExact(grid.wide(), grid.high());
    this.kept = new BlockBox(0, 0, grid.wide(), grid.high());
    this.dc = new short[blocks];
    this.place = new int[blocks];
  }

  /** Keeps only some of the blocks; before any is read. */
  void keepOnly(BlockBox blocks) {
    kept = blocks;
  }

  /** True if a block is kept; never for those that only fill up an MCU. */
  boolean keeps(int row, int column) {
    return kept.has(row, column);
  }

  /** How many blocks are kept. */
  int keptBlocks() {
    return kept.wide() * kept.high();
  }

  /** Adds the symbols of the pairs that were taken to the counts. */
  void countPairs(long[] pairs) {
    for (int i = 0; i < pairs.length; i++) {
      if (pairCounts[i] > 0) {
        acCounts[(int) (pairs[i] >>> 24) & 0xFF] += pairCounts[i];
        if ((pairs[i] >>> 48 & 3) == 2) {
          acCounts[(int) (pairs[i] >>> 40) & 0xFF] += pairCounts[i];
        }
      }
    }
  }
}
