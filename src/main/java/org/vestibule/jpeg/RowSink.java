package org.vestibule.jpeg;

/** Takes the rows of blocks of a picture that is decoded the plain way, as they are complete. */
interface RowSink {

  /**
   * A row of blocks that hold picture samples.
   *
   * @param component place in the frame
   * @param blockRow the row, from the top
   * @param blocks where the row's coefficients stand until this returns
   */
  void row(int component, int blockRow, ComponentBlocks blocks);
}
