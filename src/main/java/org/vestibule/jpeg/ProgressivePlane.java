package org.vestibule.jpeg;

/**
 * The coefficients of one component while progressive scans come in: the blocks that hold picture
 * samples, row by row.
 */
final class ProgressivePlane {

  final JpegComponent component;
  final BlockGrid grid;

  /** The blocks' DC coefficients, which come in scans of their own. */
  final short[] dc;

  /** AC coefficients of all planes, 64 places for each block in zigzag order. */
  final short[] values;

  /** The first place of this plane. */
  final int offset;

  /**
   * For each block, a bit for each AC coefficient that is not zero. Later scans depend on which
   * those are; most blocks can be refined, or passed over, without touching their values.
   */
  final long[] filled;

  ProgressivePlane(JpegComponent component, BlockGrid grid, short[] values, int offset) {
    this.component = component;
    this.grid = grid;
    this.values = values;
    this.offset = offset;
    this.dc = new short[blocks(grid)];
    this.filled = new long[dc.length];
  }

  /** Blocks of a plane. */
  static int blocks(BlockGrid grid) {
    return Math.multiplyExact(grid.wide(), grid.high());
  }

  /** The first place of a block. */
  int base(int index) {
    return offset + (index << 6);
  }
}
