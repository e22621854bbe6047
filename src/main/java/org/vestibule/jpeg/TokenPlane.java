package org.vestibule.jpeg;

/**
 * Where the blocks of one component stand among the tokens: those that hold picture samples, row by
 * row as stored.
 */
final class TokenPlane {

  final JpegComponent component;
  final BlockGrid grid;

  /** The blocks' DC coefficients. */
  final short[] dc;

  /** The place of each block's first token. */
  final int[] place;

  /** The quantisation table in zigzag order, as stored. */
  int[] quantisation = new int[0];

  TokenPlane(JpegFrame frame, JpegComponent component) {
    this.component = component;
    this.grid = BlockGrid.of(frame, component);
    int blocks = Math.multiplyExact(grid.wide(), grid.high());
    this.dc = new short[blocks];
    this.place = new int[blocks];
  }
}
