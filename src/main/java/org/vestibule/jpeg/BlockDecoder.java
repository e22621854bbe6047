package org.vestibule.jpeg;

/** Decodes one block of one kind of scan into its place among the coefficients. */
interface BlockDecoder {

  /**
   * Reads one block.
   *
   * @param part place of the component in the scan
   * @param values the component's coefficients
   * @param base index of the block's DC coefficient
   */
  void block(BitReader in, int part, short[] values, int base) throws JpegFault;

  /** Forgets predictions and runs, as at the start of every restart interval. */
  void reset();

  /** What is wrong with a block, at the reader's place. */
  static JpegFault damaged(BitReader in, String what) {
    return JpegFault.damaged(
        "the picture's data is damaged near byte " + in.position() + " (" + what + ")");
  }
}
