package org.vestibule.jpeg;

/** The source's blocks as the proof compares with them. */
interface ProofBlocks {

  /**
   * Says which block is asked for soon: where a picture is turned they lie far apart, and memory
   * answers several calls at once in the time of one.
   */
  void soon(int component, int storedRow, int storedColumn);

  /**
   * True if a block of the result is this block of the source, turned.
   *
   * @param storedRow block row in the source
   * @param values coefficients in zigzag order from {@code base}
   */
  boolean holds(int component, int storedRow, int storedColumn, short[] values, int base);
}
