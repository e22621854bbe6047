package org.vestibule.jpeg;

/** Writes the blocks of a picture's tokens. */
final class TokenWriter extends ScanWriter {

  private final Tokens tokens;

  /**
   * For all scans of a result.
   *
   * @param sizeHint bytes that the longest scan is expected to take
   */
  TokenWriter(
      TokenPicture picture, BlockTurn turn, HuffmanTable[] dc, HuffmanTable[] ac, int sizeHint) {
    super(picture, turn, dc, ac, sizeHint);
    this.tokens = picture.tokens;
  }

  @Override
  void ac(int component, int[] codes, int place) {
    short[] chunk = tokens.chunk(place);
    long word = bits;
    int free = room;
    int to = size;
    int position = 0;
    int at = Tokens.index(place);
    while (true) {
      int token = chunk[at++];
      int symbol = token >>> 8 & 0xFF;
      int code = codes[symbol];
      int length = code & 0xFF;
      long next = (long) code >>> 8;
      if (symbol != 0) {
        int extra = symbol & 15;
        int value = token & 0xFF;
        if (extra > Tokens.MOST_BITS) {
          value = chunk[at++];
        }
        position += (symbol >>> 4) + 1;
        int flipped = value ^ (negated[position] & ((1 << extra) - 1));
        next = next << extra | flipped;
      } else if (token == Tokens.FULL) {
        break;
      }
      free -= length;
      if (free >= 0) {
        word = word << length | next;
      } else {
        to = write(word << (length + free) | next >>> -free, to);
        word = next;
        free += Long.SIZE;
      }
      if (symbol == 0) {
        break;
      }
    }
    bits = word;
    room = free;
    size = to;
  }
}
