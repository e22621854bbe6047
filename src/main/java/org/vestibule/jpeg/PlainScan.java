package org.vestibule.jpeg;

import java.util.ArrayList;
import java.util.List;

/**
 * The one scan of a sequential picture whose entropy-coded bytes can be kept as they are.
 *
 * @param dcTables each component's DC table, in the frame's order
 * @param acTables each component's AC table
 * @param restartInterval MCUs between restart markers; 0 for none
 * @param from offset of the first entropy-coded byte
 * @param to offset just past the last
 */
record PlainScan(
    List<HuffmanTable> dcTables,
    List<HuffmanTable> acTables,
    int restartInterval,
    int from,
    int to) {

  private static final int MOST_TABLES = 2;

  /** Bytes that the tables of an ordinary picture take, roughly. */
  private static final int HEADER = 1024;

  PlainScan {
    dcTables = List.copyOf(dcTables);
    acTables = List.copyOf(acTables);
  }

  /** True if a baseline picture may use as many tables (T.81 B.2.4.2). */
  boolean hasBaselineTables() {
    return distinct(dcTables).size() <= MOST_TABLES && distinct(acTables).size() <= MOST_TABLES;
  }

  /**
   * A bare baseline picture with the scan's bytes as they are.
   *
   * @param frame its frame
   * @param quantisation each component's table in zigzag order
   */
  byte[] rewrapped(byte[] source, JpegFrame frame, List<int[]> quantisation) throws JpegFault {
    List<HuffmanTable> dc = distinct(dcTables);
    List<HuffmanTable> ac = distinct(acTables);
    BaselineWriter out = new BaselineWriter(HEADER);
    out.frame(frame, quantisation);
    for (int i = 0; i < dc.size(); i++) {
      out.huffman(0, i, dc.get(i));
    }
    for (int i = 0; i < ac.size(); i++) {
      out.huffman(1, i, ac.get(i));
    }
    if (restartInterval > 0) {
      out.restartInterval(restartInterval);
    }
    int[] components = new int[dcTables.size()];
    int[] tables = new int[components.length];
    for (int i = 0; i < components.length; i++) {
      components[i] = i;
      tables[i] = indexOf(dc, dcTables.get(i)) << 4 | indexOf(ac, acTables.get(i));
    }
    out.scan(components, tables);
    return out.finishWith(source, from, to);
  }

  private static List<HuffmanTable> distinct(List<HuffmanTable> tables) {
    List<HuffmanTable> distinct = new ArrayList<>();
    for (HuffmanTable table : tables) {
      if (indexOf(distinct, table) == distinct.size()) {
        distinct.add(table);
      }
    }
    return distinct;
  }

  private static int indexOf(List<HuffmanTable> tables, HuffmanTable wanted) {
    int index = 0;
    while (index < tables.size() && !tables.get(index).sameAs(wanted)) {
      index++;
    }
    return index;
  }
}
