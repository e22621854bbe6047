package org.vestibule.jpeg;

import java.util.Arrays;

/** Writes the symbols of scans as Huffman codes, with byte stuffing (ITU-T T.81 F.1.2.3). */
final class ScanWriter extends BlockCoder {

  private static final int SLACK_BYTES = 16;

  /** Code and length of each symbol, {@code code << 8 | length}, by table. */
  private final int[][] dcCodes;

  private final int[][] acCodes;
  private byte[] out;
  private int size;

  /** Unwritten bits, the first one on top. */
  private long bits;

  private int count;

  ScanWriter(BlockTurn turn, int components, HuffmanTable[] dc, HuffmanTable[] ac, int sizeHint) {
    super(turn, components);
    this.dcCodes = codes(dc);
    this.acCodes = codes(ac);
    this.out = new byte[Math.max(sizeHint, 1024)];
  }

  private static int[][] codes(HuffmanTable[] tables) {
    int[][] codes = new int[tables.length][256];
    for (int i = 0; i < tables.length; i++) {
      int code = 0;
      int index = 0;
      for (int length = 1; length <= 16; length++) {
        for (int n = 0; n < tables[i].count(length); n++) {
          codes[i][tables[i].symbol(index++)] = code++ << 8 | length;
        }
        code <<= 1;
      }
    }
    return codes;
  }

  @Override
  void start() {
    super.start();
    bits = 0;
    count = 0;
    size = 0;
  }

  @Override
  void dc(int component, int size, int bits) {
    code(dcCodes[SymbolCounter.tableOf(component)][size], size, bits);
  }

  @Override
  void ac(int component, int symbol, int bits) {
    code(acCodes[SymbolCounter.tableOf(component)][symbol], symbol & 15, bits);
  }

  private void code(int code, int extra, int value) {
    int length = code & 0xFF;
    long word = (long) (code >>> 8) << extra | (value & ((1 << extra) - 1));
    int total = length + extra;
    if (count + total > 64) {
      flush();
    }
    bits |= word << (64 - count - total);
    count += total;
  }

  /** Writes the whole bytes that are waiting. */
  private void flush() {
    if (out.length - size < SLACK_BYTES) {
      out = Arrays.copyOf(out, Math.addExact(out.length, out.length / 2));
    }
    while (count >= 8) {
      byte next = (byte) (bits >>> 56);
      out[size++] = next;
      if (next == (byte) 0xFF) {
        out[size++] = 0;
      }
      bits <<= 8;
      count -= 8;
    }
  }

  /** Ends the scan: pads with ones (T.81 F.1.2.3) and returns its bytes. */
  byte[] finish() {
    flush();
    if (count > 0) {
      code(0x7F << 8 | 7, 0, 0);
      count &= ~7;
      flush();
    }
    return Arrays.copyOf(out, size);
  }
}
