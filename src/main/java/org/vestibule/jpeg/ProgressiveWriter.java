package org.vestibule.jpeg;

import java.util.List;

/**
 * Writes the blocks of a progressive picture straight from where its scans left them, and sets
 * their magnitudes back to zero.
 */
final class ProgressiveWriter extends ScanWriter {

  private final List<ProgressivePlane> planes;

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
    this.planes = untold.planes;
  }

  /** As for tokens, what is used for every coefficient stays in local variables. */
  @Override
  void ac(int component, int[] codes, int index) throws JpegFault {
    ProgressivePlane plane = planes.get(component);
    short[] magnitudes = plane.magnitudes;
    int base = plane.base(index);
    long below = plane.negative[index];
    long two = plane.twos[index];
    long one = plane.ones[index];
    long word = bits;
    int free = room;
    int to = size;
    int last = 0;
    for (long rest = plane.filled[index]; rest != 0; rest &= rest - 1) {
      int position = Long.numberOfTrailingZeros(rest);
      int magnitude = magnitudes[base + position];
      magnitudes[base + position] = 0;
      magnitude |= (int) (two >>> position & 1) << 1 | (int) (one >>> position & 1);
      int extra = 32 - Integer.numberOfLeadingZeros(magnitude);
      int negative = (int) -(below >>> position & 1) ^ negated[position];
      int value = (magnitude ^ negative) & ((1 << extra) - 1);
      int run = position - last - 1;
      last = position;
      for (; run > 15; run -= 16) {
        bits = word;
        room = free;
        size = to;
        code(codes[0xF0], 0, 0);
        word = bits;
        free = room;
        to = size;
      }
      if (extra > MOST_AC_BITS) {
        throw beyondBaseline(extra, MOST_AC_BITS);
      }
      int code = codes[run << 4 | extra];
      int length = code & 0xFF;
      long next = (long) (code >>> 8) << extra | value;
      free -= length;
      if (free >= 0) {
        word = word << length | next;
      } else {
        to = write(word << (length + free) | next >>> -free, to);
        word = next;
        free += Long.SIZE;
      }
    }
    bits = word;
    room = free;
    size = to;
    if (last < 63) {
      code(codes[0], 0, 0);
    }
  }
}
