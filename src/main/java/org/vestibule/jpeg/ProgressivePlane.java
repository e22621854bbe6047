package org.vestibule.jpeg;

/**
 * The coefficients of one component while progressive scans come in: the blocks that hold picture
 * samples, row by row, 64 values each in zigzag order.
 */
final class ProgressivePlane {

  final JpegComponent component;
  final BlockGrid grid;
  final short[] values;

  /**
   * For each block, a bit for each AC coefficient that is not zero. Later scans depend on which
   * those are; most blocks can be refined, or passed over, without touching their values.
   */
  final long[] filled;

  ProgressivePlane(JpegFrame frame, JpegComponent component) {
    this.component = component;
    this.grid = BlockGrid.of(frame, component);
    int blocks = Math.multiplyExact(grid.wide(), grid.high());
    this.values = new short[Math.multiplyExact(64, blocks)];
    this.filled = new long[blocks];
  }
}
