package org.vestibule.jpeg;

import java.util.ArrayList;
import java.util.List;
import org.vestibule.base.Turn;

/**
 * 128 bits for each of the source's blocks, where all coefficients of a very large picture would
 * not fit into memory. Two blocks with one differing coefficient always differ in their digests;
 * two that differ in more are taken for the same in one of 2^128 cases.
 */
final class DigestProofBlocks implements ProofBlocks, RowSink {

  private final ProofTurn turn;
  private final List<BlockGrid> grids = new ArrayList<>();

  /** Two words for each block, by component. */
  private final List<long[]> digests = new ArrayList<>();

  DigestProofBlocks(JpegFrame frame, Turn turn) {
    this.turn = new ProofTurn(turn);
    for (JpegComponent component : frame.components()) {
      BlockGrid grid = BlockGrid.of(frame, component);
      grids.add(grid);
      digests.add(new long[Math.multiplyExact(2, Math.multiplyExact(grid.wide(), grid.high()))]);
    }
  }

  /** Bytes that the digests of a picture take. */
  static long bytes(JpegFrame frame) {
    return MemoryNeed.coefficients(frame) / 8;
  }

  @Override
  public void row(int component, int blockRow, ComponentBlocks blocks) {
    int wide = grids.get(component).wide();
    long[] to = digests.get(component);
    for (int column = 0; column < wide; column++) {
      int base = blocks.base(blockRow, column);
      long first = 0;
      long second = 0;
      for (int position = 0; position < 64; position++) {
        int value = blocks.values[base + turn.stored(position)];
        if (value != 0) {
          long word = word(position, turn.isNegated(position) ? -value : value);
          first += mixed(word);
          second += mixed(~word);
        }
      }
      int at = 2 * (blockRow * wide + column);
      to[at] = first;
      to[at + 1] = second;
    }
  }

  @Override
  public void soon(int component, int storedRow, int storedColumn) {
    // Digests of neighbours lie near enough.
  }

  @Override
  public boolean holds(int component, int storedRow, int storedColumn, short[] values, int base) {
    long first = 0;
    long second = 0;
    for (int position = 0; position < 64; position++) {
      if (values[base + position] != 0) {
        long word = word(position, values[base + position]);
        first += mixed(word);
        second += mixed(~word);
      }
    }
    long[] from = digests.get(component);
    int at = 2 * (storedRow * grids.get(component).wide() + storedColumn);
    return from[at] == first && from[at + 1] == second;
  }

  private static long word(int position, int value) {
    return (long) position << 32 | (value & 0xFFFF_FFFFL);
  }

  /** A one-to-one mixing of 64 bits: xor-shifts and multiplications by odd constants. */
  private static long mixed(long word) {
    long mixed = (word ^ word >>> 30) * 0xBF58476D1CE4E5B9L + 0x9E3779B97F4A7C15L;
    mixed = (mixed ^ mixed >>> 27) * 0x94D049BB133111EBL;
    mixed = (mixed ^ mixed >>> 32) * 0xD6E8FEB86659FD93L;
    return mixed ^ mixed >>> 31;
  }
}
