package org.vestibule.jpeg;

/**
 * Writes the blocks of a progressive picture straight from where its scans left them, and sets
 * their quarters back to zero.
 */
final class ProgressiveWriter extends ScanWriter {

  private static final int LENGTH_BITS = 5;
  private static final int LENGTH = (1 << LENGTH_BITS) - 1;

  private final ProgressivePlane[] planes;

  /**
   * Codes by table, then by run and leading zeros of the magnitude as an int, {@code run << 5 |
   * zeros}: code, with room below it for the value, and length of both, {@code code << 5 | length}.
   */
  private final int[][] runCodes;

  /** A bit for each zigzag position whose sign changes. */
  private final long turned;

  /**
   * For all scans of a result.
   *
   * @param sizeHint bytes that the longest scan is expected to take
   */
  ProgressiveWriter(
      TokenPicture picture,
      ProgressivePicture untold,
      BlockTurn turn,
      HuffmanTable[] dc,
      HuffmanTable[] ac,
      int sizeHint) {
    super(picture, turn, dc, ac, sizeHint);
    this.planes = untold.planes.toArray(new ProgressivePlane[0]);
    this.runCodes = new int[acCodes.length][];
    for (int i = 0; i < acCodes.length; i++) {
      runCodes[i] = runCodes(acCodes[i]);
    }
    long signs = 0;
    for (int i = 0; i < 64; i++) {
      signs |= (negated[i] & 1L) << i;
    }
    this.turned = signs;
  }

  private static int[] runCodes(int[] codes) {
    int[] runCodes = new int[16 << 5];
    for (int run = 0; run < 16; run++) {
      for (int extra = 1; extra <= MOST_AC_BITS; extra++) {
        int code = codes[run << 4 | extra];
        runCodes[run << 5 | 32 - extra] = code >>> 8 << extra << LENGTH_BITS | (code & LENGTH);
      }
    }
    return runCodes;
  }

  /** As for tokens, what is used for every coefficient stays in local variables. */
  @Override
  void ac(int component, int[] codes, int index) {
    ProgressivePlane plane = planes[component];
    int[] runs = runCodes[SymbolCounter.tableOf(component)];
    byte[] quarters = plane.quarters;
    int base = plane.base(index);
    long below = plane.negative[index] ^ turned;
    long two = plane.twos[index];
    long one = plane.packedOnes(index);
    long word = bits;
    int free = room;
    int to = size;
    int next = 1;
    for (long rest = plane.filled[index]; rest != 0; rest &= rest - 1) {
      int position = Long.numberOfTrailingZeros(rest);
      int magnitude = (quarters[base + position] & 0xFF) << 2;
      magnitude |= (int) (two >>> position & 1) << 1 | (int) (one >>> 63);
      one <<= 1;
      int zeros = Integer.numberOfLeadingZeros(magnitude);
      int value = magnitude ^ ((int) -(below >>> position & 1) & (-1 >>> zeros));
      int run = position - next;
      next = position + 1;
      if (run > 15) {
        bits = word;
        room = free;
        size = to;
        for (; run > 15; run -= 16) {
          code(codes[0xF0], 0, 0);
        }
        word = bits;
        free = room;
        to = size;
      }
      int code = runs[run << 5 | zeros];
      // As a long's shift takes six bits: the sixth is the value's lowest, which is not set yet.
      free -= code & LENGTH;
      long added = (long) (code >>> LENGTH_BITS) | value;
      if (free >= 0) {
        word = word << code | added;
      } else {
        to = write(word << (code + free) | added >>> -free, to);
        word = added;
        free += Long.SIZE;
      }
    }
    bits = word;
    room = free;
    size = to;
    plane.forget(index);
    if (next < 64) {
      code(codes[0], 0, 0);
    }
  }
}
