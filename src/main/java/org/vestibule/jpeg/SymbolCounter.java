package org.vestibule.jpeg;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** Counts the symbols of a scan, from which its Huffman tables are made. */
final class SymbolCounter implements BlockSink {

  private final Tokens tokens;
  private final @Nullable ProgressivePicture untold;
  private final boolean countsAc;
  private final int[] predictions;
  private final int[][] dcCounts = new int[2][256];
  private final int[][] acCounts = new int[2][256];

  /**
   * For all scans of a result.
   *
   * @param takesAll true if the result has all blocks that were kept of the picture, whose AC
   *     symbols were counted when it was decoded
   */
  SymbolCounter(TokenPicture picture, boolean takesAll) {
    this.countsAc = !takesAll || picture.untold != null;
    this.tokens = picture.tokens;
    this.untold = picture.untold;
    if (tokens.forgets()) {
      throw new IllegalStateException("the picture was only checked");
    }
    this.predictions = new int[picture.planes.size()];
    for (int i = 0; i < predictions.length && !countsAc; i++) {
      int[] counts = picture.planes.get(i).acCounts;
      for (int symbol = 0; symbol < counts.length; symbol++) {
        acCounts[tableOf(i)][symbol] += counts[symbol];
      }
    }
  }

  @Override
  public void start() {
    Arrays.fill(predictions, 0);
  }

  @Override
  public void block(int component, int dc, int place) {
    int difference = dc - predictions[component];
    predictions[component] = dc;
    dcCounts[tableOf(component)][32 - Integer.numberOfLeadingZeros(Math.abs(difference))]++;
    if (untold != null) {
      untold.planes.get(component).count(place, acCounts[tableOf(component)]);
    } else if (countsAc) {
      ac(acCounts[tableOf(component)], tokens.chunk(place), Tokens.index(place));
    }
  }

  @Override
  public void padding(int component) {
    dcCounts[tableOf(component)][0]++;
    acCounts[tableOf(component)][0]++;
  }

  private static void ac(int[] counts, short[] chunk, int from) {
    int at = from;
    while (true) {
      int token = chunk[at++];
      int symbol = token >>> 8 & 0xFF;
      if (symbol == 0) {
        if (token == Tokens.END) {
          counts[0]++;
        }
        return;
      }
      counts[symbol]++;
      if ((symbol & 15) > Tokens.MOST_BITS) {
        at++;
      }
    }
  }

  /** Brightness has its own tables, the other components share theirs. */
  static int tableOf(int component) {
    return component == 0 ? 0 : 1;
  }

  /** Counts every symbol of a baseline picture once more, since blocks were passed over. */
  void countAllOnce() {
    for (int table = 0; table < 2; table++) {
      for (int size = 0; size <= ScanWriter.MOST_DC_BITS; size++) {
        dcCounts[table][size]++;
      }
      acCounts[table][0]++;
      acCounts[table][0xF0]++;
      for (int run = 0; run < 16; run++) {
        for (int size = 1; size <= ScanWriter.MOST_AC_BITS; size++) {
          acCounts[table][run << 4 | size]++;
        }
      }
    }
  }

  HuffmanTable dcTable(int table) throws JpegFault {
    requireBaseline(dcCounts[table], 255, ScanWriter.MOST_DC_BITS);
    return OptimalHuffman.table(dcCounts[table]);
  }

  HuffmanTable acTable(int table) throws JpegFault {
    requireBaseline(acCounts[table], 15, ScanWriter.MOST_AC_BITS);
    return OptimalHuffman.table(acCounts[table]);
  }

  /** T.81 Tables F.1 and F.2 end at 11 bits for DC differences and 10 for AC values. */
  private static void requireBaseline(int[] counts, int sizes, int most) throws JpegFault {
    int largest = 0;
    for (int symbol = 0; symbol < counts.length; symbol++) {
      if (counts[symbol] > 0) {
        largest = Math.max(largest, symbol & sizes);
      }
    }
    if (largest > most) {
      throw ScanWriter.beyondBaseline(largest, most);
    }
  }

  /** Bits of the scans with these tables, before byte stuffing. */
  long bits(HuffmanTable[] dc, HuffmanTable[] ac) {
    long bits = 0;
    for (int i = 0; i < dc.length; i++) {
      bits += bits(dc[i], dcCounts[i]) + bits(ac[i], acCounts[i]);
    }
    return bits;
  }

  private static long bits(HuffmanTable table, int[] counts) {
    long bits = 0;
    int index = 0;
    for (int length = 1; length <= 16; length++) {
      for (int n = 0; n < table.count(length); n++, index++) {
        int symbol = table.symbol(index);
        bits += (long) counts[symbol] * (length + (symbol & 15));
      }
    }
    return bits;
  }
}
