package org.vestibule.jpeg;

import java.util.Arrays;

/**
 * Writes blocks as Huffman codes, with byte stuffing (ITU-T T.81 F.1.2), 64 bits at a time.
 *
 * <p>A reflection changes the sign of every odd frequency along its axis. The sign of a value is in
 * its additional bits, where the complement of all of them is the negative value (T.81 F.1.2.1), so
 * no value is ever computed.
 */
final class ScanWriter implements BlockSink {

  /** More bytes than a block can take: 64 codes of 27 bits, every byte stuffed, and a word. */
  private static final int SLACK = 512;

  private final Tokens tokens;

  /** Code and length of each symbol, {@code code << 8 | length with value}, by table. */
  private final int[][] dcCodes;

  private final int[][] acCodes;

  /** All ones at the zigzag positions whose sign changes, else zero. */
  private final int[] negated = new int[64 + 16];

  private final int[] predictions;
  private byte[] out;
  private int size;

  /** Unwritten bits, the last one lowest; above them may stand some that were written. */
  private long bits;

  /** How many more bits fit in. */
  private int room;

  /**
   * For all scans of a result.
   *
   * @param sizeHint bytes that the longest scan is expected to take
   */
  ScanWriter(
      TokenPicture picture, BlockTurn turn, HuffmanTable[] dc, HuffmanTable[] ac, int sizeHint) {
    this.tokens = picture.tokens;
    this.dcCodes = codes(dc);
    this.acCodes = codes(ac);
    this.predictions = new int[picture.planes.size()];
    this.out = new byte[Math.addExact(sizeHint, 2 * SLACK)];
    for (int i = 0; i < 64; i++) {
      negated[i] = turn.sign[i] < 0 ? -1 : 0;
    }
  }

  private static int[][] codes(HuffmanTable[] tables) {
    int[][] codes = new int[tables.length][256];
    for (int i = 0; i < tables.length; i++) {
      int code = 0;
      int index = 0;
      for (int length = 1; length <= 16; length++) {
        for (int n = 0; n < tables[i].count(length); n++) {
          int symbol = tables[i].symbol(index++);
          codes[i][symbol] = code++ << 8 | (length + (symbol & 15));
        }
        code <<= 1;
      }
    }
    return codes;
  }

  @Override
  public void start() {
    Arrays.fill(predictions, 0);
    bits = 0;
    room = Long.SIZE;
    size = 0;
  }

  @Override
  public void padding(int component) {
    makeRoom();
    code(dcCodes[SymbolCounter.tableOf(component)][0], 0, 0);
    code(acCodes[SymbolCounter.tableOf(component)][0], 0, 0);
  }

  @Override
  public void block(int component, int dc, int place) {
    makeRoom();
    int table = SymbolCounter.tableOf(component);
    int difference = dc - predictions[component];
    predictions[component] = dc;
    int length = 32 - Integer.numberOfLeadingZeros(Math.abs(difference));
    int value = (difference < 0 ? difference - 1 : difference) & ((1 << length) - 1);
    code(dcCodes[table][length], length, value);
    ac(acCodes[table], tokens.chunk(place), Tokens.index(place));
  }

  private void ac(int[] codes, short[] chunk, int from) {
    long word = bits;
    int free = room;
    int to = size;
    int position = 0;
    int at = from;
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

  private int write(long word, int at) {
    if (ScanBits.hasNoFill(word)) {
      ScanBits.WORD.set(out, at, word);
      return at + 8;
    }
    int to = at;
    for (int shift = 56; shift >= 0; shift -= 8) {
      byte next = (byte) (word >>> shift);
      out[to++] = next;
      if (next == (byte) 0xFF) {
        out[to++] = 0;
      }
    }
    return to;
  }

  private void code(int code, int extra, int value) {
    int length = code & 0xFF;
    long next = (long) (code >>> 8) << extra | value;
    room -= length;
    if (room >= 0) {
      bits = bits << length | next;
    } else {
      size = write(bits << (length + room) | next >>> -room, size);
      bits = next;
      room += Long.SIZE;
    }
  }

  private void makeRoom() {
    if (out.length - size < SLACK) {
      out = Arrays.copyOf(out, Math.addExact(out.length, out.length / 8));
    }
  }

  /** Ends the scan, padding its last byte with ones (T.81 F.1.2.3), and appends it. */
  void finish(BaselineWriter to) {
    makeRoom();
    int count = Long.SIZE - room;
    while (count > 0) {
      int last = (int) (count >= 8 ? bits >>> (count - 8) : bits << (8 - count) | 0xFF >> count);
      out[size++] = (byte) last;
      if ((last & 0xFF) == 0xFF) {
        out[size++] = 0;
      }
      count -= Math.min(count, 8);
    }
    to.coded(out, 0, size);
  }
}
