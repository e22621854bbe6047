package org.vestibule.jpeg;

import org.jspecify.annotations.Nullable;

/**
 * What is made of one component's blocks as {@link ValueScan} reads them.
 *
 * @param grid the component's blocks
 * @param samples takes what a first look needs; null if nobody looks
 * @param weigher takes what the blocks weigh; null if they aren't weighed
 */
record PlaneReading(
    BlockGrid grid, @Nullable ReducedPlane samples, @Nullable PlaneWeigher weigher) {

  /** The steps of fine frequencies, where a row's blocks are asked for their energy. */
  int @Nullable [] fine() {
    return samples == null ? null : samples.fine;
  }

  @Nullable BlockWeights weights() {
    return weigher == null ? null : weigher.weights;
  }

  /** Takes the block that was read last, unless it only fills up an MCU. */
  void block(int row, int column, ValueReader read) {
    if (row < grid.high() && column < grid.wide()) {
      if (samples != null) {
        samples.block(row, column, read);
      }
      if (weigher != null) {
        weigher.block(row, column, read);
      }
    }
  }
}
