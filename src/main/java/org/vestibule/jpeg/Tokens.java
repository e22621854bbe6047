package org.vestibule.jpeg;

import java.util.Arrays;

/**
 * The AC coefficients of blocks as the symbols of a sequential scan (ITU-T T.81 F.1.2.2) with their
 * additional bits, a {@code short} each, block after block in chunks that no block crosses.
 *
 * <p>A token is {@code run << 12 | size << 8 | bits}. Where the bits are more than eight, they
 * stand alone in the next place. Each block ends with {@link #END}, or with {@link #FULL} if its
 * last coefficient is not zero, which needs no symbol.
 */
final class Tokens {

  /** End of block. */
  static final short END = 0;

  /** The block is over without a symbol that says so. */
  static final short FULL = 1;

  /** Sixteen zeros. */
  static final short ZERO_RUN = (short) 0xF000;

  /** Bits that fit in a token. */
  static final int MOST_BITS = 8;

  /** More tokens than a block can take: 63 of two places, and its end. */
  static final int BLOCK = 128;

  private static final int CHUNK_BITS = 17;
  private static final int CHUNK = 1 << CHUNK_BITS;

  private final int mostChunks;
  private final boolean forgets;
  private short[][] chunks = new short[4][];
  private int used;

  /** The chunk being filled, and the next free place in it. */
  short[] chunk;

  int next;

  /**
   * Starts with room for what is likely needed.
   *
   * @param codedBytes entropy-coded bytes of the picture
   * @param mostBytes bytes that were admitted for tokens
   */
  Tokens(long codedBytes, long mostBytes) {
    this(codedBytes, mostBytes, false);
  }

  private Tokens(long codedBytes, long mostBytes, boolean forgets) {
    this.forgets = forgets;
    this.mostChunks = (int) (mostBytes / (2 * CHUNK)) + 1;
    chunk = new short[(int) Math.min(CHUNK, 2 * BLOCK + 3 * codedBytes / 2)];
    chunks[used++] = chunk;
  }

  /** For reading blocks only to see whether they can be read: each takes the place of the last. */
  static Tokens forgetting() {
    return new Tokens(0, 0, true);
  }

  /** True if blocks can't be read back. */
  boolean forgets() {
    return forgets;
  }

  /** Makes room for a block and returns its place. */
  int begin() throws JpegFault {
    if (forgets) {
      next = 0;
      return 0;
    }
    if (next > chunk.length - BLOCK) {
      if (used > mostChunks) {
        throw JpegFault.unsuited(
            "the picture holds more values than its size lets expect",
            "export the photo again as an ordinary JPEG");
      }
      if (used == chunks.length) {
        chunks = Arrays.copyOf(chunks, 2 * used);
      }
      chunk = new short[CHUNK];
      chunks[used++] = chunk;
      next = 0;
    }
    return Math.addExact((used - 1) << CHUNK_BITS, next);
  }

  /** The chunk that holds a place. */
  short[] chunk(int place) {
    return chunks[place >>> CHUNK_BITS];
  }

  /** The index of a place in its chunk. */
  static int index(int place) {
    return place & (CHUNK - 1);
  }
}
