package org.vestibule.jpeg;

import org.jspecify.annotations.Nullable;

/**
 * The tables and restart interval in force while a picture is read; segments between scans may
 * change them (ITU-T T.81 B.2.4).
 */
final class DecodingTables {

  private final byte[] bytes;
  private final int[] @Nullable [] quantisation = new int[4][];
  private final @Nullable HuffmanTable[] dc = new HuffmanTable[4];
  private final @Nullable HuffmanTable[] ac = new HuffmanTable[4];
  private int restartInterval;

  DecodingTables(byte[] bytes) {
    this.bytes = bytes;
  }

  /** Takes over a DQT, DHT or DRI segment; others are left alone. */
  void take(JpegSegment segment) throws JpegFault {
    switch (segment.marker()) {
      case Markers.DQT -> quantisation(segment);
      case Markers.DHT -> huffman(segment);
      case Markers.DRI -> {
        if (segment.dataLength() != 2) {
          throw wrongLength(segment);
        }
        restartInterval = Bytes.u16(bytes, segment.dataStart());
      }
      default -> {}
    }
  }

  /** MCUs between restart markers; 0 for none. */
  int restartInterval() {
    return restartInterval;
  }

  /** The quantisation table in zigzag order. */
  int[] quantisationTable(int selector) throws JpegFault {
    int[] table = quantisation[selector];
    if (table == null) {
      throw JpegFault.damaged("quantisation table " + selector + " is used but not defined");
    }
    return table;
  }

  HuffmanTable dcTable(int selector) throws JpegFault {
    return required(dc[selector], "DC", selector);
  }

  HuffmanTable acTable(int selector) throws JpegFault {
    return required(ac[selector], "AC", selector);
  }

  private static HuffmanTable required(@Nullable HuffmanTable table, String kind, int selector)
      throws JpegFault {
    if (table == null) {
      throw JpegFault.damaged(
          "Huffman table " + kind + " " + selector + " is used but not defined");
    }
    return table;
  }

  private void quantisation(JpegSegment segment) throws JpegFault {
    int at = segment.dataStart();
    while (at < segment.dataEnd()) {
      int precision = Bytes.u8(bytes, at) >> 4;
      int selector = Bytes.u8(bytes, at) & 15;
      int size = precision == 0 ? 64 : 128;
      if (precision > 1 || selector > 3 || segment.dataEnd() - at < 1 + size) {
        throw wrongLength(segment);
      }
      int[] table = new int[64];
      for (int i = 0; i < 64; i++) {
        table[i] = precision == 0 ? Bytes.u8(bytes, at + 1 + i) : Bytes.u16(bytes, at + 1 + 2 * i);
        if (table[i] == 0) {
          throw JpegFault.damaged(segment.place() + " has a quantisation step of 0");
        }
      }
      quantisation[selector] = table;
      at += 1 + size;
    }
  }

  private void huffman(JpegSegment segment) throws JpegFault {
    int at = segment.dataStart();
    while (at < segment.dataEnd()) {
      if (segment.dataEnd() - at < 17) {
        throw wrongLength(segment);
      }
      int kind = Bytes.u8(bytes, at) >> 4;
      int selector = Bytes.u8(bytes, at) & 15;
      int[] counts = new int[17];
      int total = 0;
      for (int length = 1; length <= 16; length++) {
        counts[length] = Bytes.u8(bytes, at + length);
        total += counts[length];
      }
      if (kind > 1 || selector > 3 || total > 256 || segment.dataEnd() - at - 17 < total) {
        throw wrongLength(segment);
      }
      int[] symbols = new int[total];
      for (int i = 0; i < total; i++) {
        symbols[i] = Bytes.u8(bytes, at + 17 + i);
      }
      (kind == 0 ? dc : ac)[selector] = new HuffmanTable(counts, symbols);
      at += 17 + total;
    }
  }

  private static JpegFault wrongLength(JpegSegment segment) {
    return JpegFault.damaged(
        segment.place()
            + " has "
            + segment.dataLength()
            + " bytes of data that do not make up whole, valid tables");
  }
}
