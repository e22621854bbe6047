package org.vestibule.jpeg;

import org.jspecify.annotations.Nullable;

/**
 * One component's samples at one or two to a block's edge, and what they and the fine frequencies
 * say, made block by block while a scan is read: the same in integers as {@link ReducedInverse} and
 * {@link FactsReader} make of tokens that are kept. This is where a first look spends its time
 * beside decoding: state lives in locals and nothing is allocated for a block.
 */
final class ReducedPlane {

  /** Zigzag positions of the frequencies (0, 1), (1, 0) and (1, 1), row before column. */
  private static final int ACROSS = 1;

  private static final int DOWN = 2;
  private static final int BOTH = 4;

  final BlockGrid grid;

  /** Samples of a block across, 1 or 2. */
  final int across;

  /** Samples of a block down, 1 or 2. */
  final int down;

  final int stride;
  final byte[] samples;
  private final int[] steps;

  /** All bits if samples differ across; none if there is one for all. */
  private final int leans;

  /** The same down. */
  private final int falls;

  /** A sample for each block, where facts are counted. */
  final byte[] means;

  /** The steps of the fine frequencies, 0 at all other positions; null if they don't count. */
  final int @Nullable [] fine;

  private final @Nullable FactsCounter facts;

  /**
   * An empty plane.
   *
   * @param steps quantisation in zigzag order
   * @param across samples of a block across, 1 or 2
   * @param down samples of a block down, 1 or 2
   * @param facts counts what the blocks say; needs two samples each way; null for no facts
   */
  ReducedPlane(BlockGrid grid, int[] steps, int across, int down, @Nullable FactsCounter facts) {
    this.grid = grid;
    this.steps = steps.clone();
    this.across = across;
    this.down = down;
    this.leans = across == 2 ? -1 : 0;
    this.falls = down == 2 ? -1 : 0;
    this.fine = facts == null ? null : fine(steps);
    this.means = new byte[facts == null ? 0 : Math.multiplyExact(grid.wide(), grid.high())];
    this.facts = facts;
    this.stride = Math.multiplyExact(grid.wide(), across);
    this.samples = new byte[Math.multiplyExact(stride, Math.multiplyExact(grid.high(), down))];
  }

  private static int[] fine(int[] steps) {
    int[] fine = new int[64];
    for (int at = FactsCounter.FIRST_FINE; at <= FactsCounter.LAST_FINE; at++) {
      fine[at] = steps[at];
    }
    return fine;
  }

  /** Takes a block that was just read. */
  void block(int row, int column, ValueReader read) {
    int mean = read.dc * steps[0] + 4;
    if (across == 1 && down == 1) {
      samples[row * stride + column] = sample(mean);
      return;
    }
    int[] low = read.low;
    place(
        row,
        column,
        mean,
        (low[ACROSS] * steps[ACROSS]) & leans,
        (low[DOWN] * steps[DOWN]) & falls,
        (low[BOTH] * steps[BOTH]) & leans & falls);
    if (facts != null) {
      means[row * grid.wide() + column] = sample(mean);
      facts.detail(read.energy);
    }
  }

  private void place(int row, int column, int mean, int lean, int fall, int twist) {
    int at = row * down * stride + column * across;
    samples[at] = sample(mean + lean + fall + twist);
    if (across == 2) {
      samples[at + 1] = sample(mean - lean + fall - twist);
    }
    if (down == 2) {
      samples[at + stride] = sample(mean + lean - fall - twist);
      if (across == 2) {
        samples[at + stride + 1] = sample(mean - lean - fall + twist);
      }
    }
  }

  static byte sample(int eight) {
    return (byte) Math.max(0, Math.min(255, (eight >> 3) + 128));
  }
}
