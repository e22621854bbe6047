package org.vestibule.jpeg;

/** Estimates, from the headers alone, the bytes of memory that work on a picture takes. */
final class MemoryNeed {

  /** A token takes two bytes and stands for at least two coded bits. */
  private static final int MOST_TOKEN_BYTES = 8;

  /** Photographs have about five coded bits to a token. */
  private static final int LIKELY_TOKEN_BYTES = 4;

  private static final long SMALL = 64L << 20;

  private MemoryNeed() {}

  /**
   * Tokens of a picture: all that can be for a small one, with room to spare for a large one; each
   * block has one that ends it, which may have taken no bits.
   */
  static long tokens(JpegStructure structure) {
    long coded = structure.codedBytes();
    long most = Math.multiplyExact(coded, MOST_TOKEN_BYTES);
    long ends = Math.multiplyExact(2L, blocks(structure.frame()));
    return 4096 + ends + Math.min(most, Math.multiplyExact(coded, LIKELY_TOKEN_BYTES) + SMALL);
  }

  /** Decoding to tokens and writing a result. */
  static long transcoding(JpegStructure structure) {
    long blocks = blocks(structure.frame());
    long index = Math.multiplyExact(6L, blocks);
    long result = Math.multiplyExact(2L, structure.codedBytes());
    long scans = structure.progressive() ? Math.multiplyExact(64L + 4 * 8, blocks) : 0;
    return index + result + scans + tokens(structure);
  }

  /** Reading scans without keeping their tokens. */
  static long checking(JpegFrame frame) {
    return Math.multiplyExact(6L, blocks(frame));
  }

  /** All coefficients at once. */
  static long coefficients(JpegFrame frame) {
    return Math.multiplyExact(128L, blocks(frame));
  }

  /** Blocks of all components, with padding. */
  static long blocks(JpegFrame frame) {
    long blocks = 0;
    for (JpegComponent component : frame.components()) {
      blocks = Math.addExact(blocks, BlockGrid.of(frame, component).allocated());
    }
    return blocks;
  }
}
