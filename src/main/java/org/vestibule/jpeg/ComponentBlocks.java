package org.vestibule.jpeg;

import java.util.Arrays;

/**
 * The quantised coefficients of one component: blocks row by row, 64 values each in zigzag order,
 * and its quantisation table in zigzag order; all rows, or only those of one MCU row at a time.
 * Owned by the engine and shared without copying.
 */
final class ComponentBlocks {

  final JpegComponent component;
  final BlockGrid grid;
  final short[] values;
  int[] quantisation = new int[0];

  /** Rows of blocks that there is room for. */
  private final int rows;

  ComponentBlocks(JpegFrame frame, JpegComponent component) {
    this(frame, component, BlockGrid.of(frame, component).rows());
  }

  private ComponentBlocks(JpegFrame frame, JpegComponent component, int rows) {
    this.component = component;
    this.grid = BlockGrid.of(frame, component);
    this.rows = rows;
    this.values = new short[Math.toIntExact(64L * grid.stride() * rows)];
  }

  /** Room for one MCU row, in which each row takes the place of an earlier one. */
  static ComponentBlocks strip(JpegFrame frame, JpegComponent component) {
    return new ComponentBlocks(frame, component, component.vertical());
  }

  /** Index of a block's DC coefficient. */
  int base(int blockRow, int blockColumn) {
    return (blockRow % rows * grid.stride() + blockColumn) << 6;
  }

  /** Sets all coefficients to zero. */
  void clear() {
    Arrays.fill(values, (short) 0);
  }
}
