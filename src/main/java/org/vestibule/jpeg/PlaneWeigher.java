package org.vestibule.jpeg;

import java.util.Arrays;

/** Weighs one component's blocks, each by the place that it has in the source. */
final class PlaneWeigher {

  final BlockWeights weights;
  private final long component;

  /** The share that a row and a column have in the place in the source; -1 for what is left out. */
  private final int[] rows;

  private final int[] columns;

  /** The sums over all blocks. */
  long first;

  long second;

  /** Blocks that were weighed. */
  long blocks;

  PlaneWeigher(BlockWeights weights, int component, int[] rows, int[] columns) {
    this.weights = weights;
    this.component = (long) component << 32;
    this.rows = rows.clone();
    this.columns = columns.clone();
  }

  /** For all blocks of the source. */
  static PlaneWeigher ofSource(BlockWeights weights, int component, BlockGrid grid) {
    int[] rows = new int[grid.high()];
    Arrays.setAll(rows, row -> row * grid.wide());
    int[] columns = new int[grid.wide()];
    Arrays.setAll(columns, column -> column);
    return new PlaneWeigher(weights, component, rows, columns);
  }

  void block(int row, int column, ValueReader read) {
    if (rows[row] < 0 || columns[column] < 0) {
      return;
    }
    // Mixed, so that what one block has too much never makes up for what another has too little.
    long place = BlockWeights.place(component + rows[row] + columns[column]);
    first += BlockWeights.mixed(read.firstWeight + place);
    second += BlockWeights.mixed(read.secondWeight ^ place);
    blocks++;
  }
}
