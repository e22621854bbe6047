package org.vestibule.jpeg;

import java.util.Arrays;

/**
 * Writes blocks as Huffman codes, with byte stuffing (ITU-T T.81 F.1.2), 64 bits at a time.
 *
 * <p>A reflection changes the sign of every odd frequency along its axis. The sign of a value is in
 * its additional bits, where the complement of all of them is the negative value (T.81 F.1.2.1), so
 * no value is ever computed.
 */
abstract class ScanWriter implements BlockSink {

  /** More bytes than a block can take: 64 codes of 27 bits, every byte stuffed, and a word. */
  private static final int SLACK = 512;

  /** T.81 Table F.1. */
  static final int MOST_DC_BITS = 11;

  /** T.81 Table F.2. */
  static final int MOST_AC_BITS = 10;

  /** Code and length of each symbol, {@code code << 8 | length with value}, by table. */
  private final int[][] dcCodes;

  final int[][] acCodes;

  /** All ones at the zigzag positions whose sign changes, else zero. */
  final int[] negated = new int[64 + 16];

  private final int[] predictions;
  private byte[] out;
  int size;

  /** Unwritten bits, the last one lowest; above them may stand some that were written. */
  long bits;

  /** How many more bits fit in. */
  int room;

  /**
   * For all scans of a result.
   *
   * @param sizeHint bytes that the longest scan is expected to take
   */
  ScanWriter(
      TokenPicture picture, BlockTurn turn, HuffmanTable[] dc, HuffmanTable[] ac, int sizeHint) {
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
  public final void block(int component, int dc, int place) throws JpegFault {
    makeRoom();
    int table = SymbolCounter.tableOf(component);
    int difference = dc - predictions[component];
    predictions[component] = dc;
    int length = 32 - Integer.numberOfLeadingZeros(Math.abs(difference));
    int value = (difference < 0 ? difference - 1 : difference) & ((1 << length) - 1);
    if (length > MOST_DC_BITS) {
      throw beyondBaseline(length, MOST_DC_BITS);
    }
    code(dcCodes[table][length], length, value);
    ac(component, acCodes[table], place);
  }

  /**
   * Writes the AC coefficients of a block.
   *
   * @param codes code and length of each symbol
   */
  abstract void ac(int component, int[] codes, int place) throws JpegFault;

  /** What a value is that a baseline picture can't carry (T.81 Tables F.1 and F.2). */
  static JpegFault beyondBaseline(int bits, int most) {
    return JpegFault.unsuited(
        "the picture holds a value of "
            + bits
            + " bits, more than the "
            + most
            + " that a baseline JPEG can carry",
        "export the photo again as an ordinary JPEG");
  }

  final int write(long word, int at) {
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

  /** Writes one code and its value. */
  final void code(int code, int extra, int value) {
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

  /** Ends the scan and appends it. */
  final void finish(BaselineWriter to) {
    pad();
    to.coded(out, 0, size);
  }

  /** Ends the last scan, and the picture with it. */
  final byte[] finishAll(BaselineWriter to) {
    pad();
    return to.finishWith(out, 0, size);
  }

  /** Pads the last byte with ones (T.81 F.1.2.3). */
  private void pad() {
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
  }
}
