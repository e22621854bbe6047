package org.vestibule.jpeg;

/**
 * The quantised coefficients of one component: blocks row by row, 64 values each in zigzag order,
 * and its quantisation table in zigzag order. Owned by the engine and shared without copying.
 */
final class ComponentBlocks {

  final JpegComponent component;
  final BlockGrid grid;
  final short[] values;
  int[] quantisation = new int[0];

  ComponentBlocks(JpegFrame frame, JpegComponent component) {
    this.component = component;
    this.grid = BlockGrid.of(frame, component);
    this.values = new short[Math.toIntExact(Math.multiplyExact(64L, grid.allocated()))];
  }

  /** Index of a block's DC coefficient. */
  int base(int blockRow, int blockColumn) {
    return (blockRow * grid.stride() + blockColumn) << 6;
  }
}
