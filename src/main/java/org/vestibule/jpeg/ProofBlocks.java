package org.vestibule.jpeg;

/** The source's blocks as the proof compares with them. */
interface ProofBlocks {

  /**
   * True if a block of the result is this block of the source, turned.
   *
   * @param storedRow block row in the source
   * @param values coefficients in zigzag order from {@code base}
   */
  boolean holds(int component, int storedRow, int storedColumn, short[] values, int base);
}
