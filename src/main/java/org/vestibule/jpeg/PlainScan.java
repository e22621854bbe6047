package org.vestibule.jpeg;

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

  PlainScan {
    dcTables = List.copyOf(dcTables);
    acTables = List.copyOf(acTables);
  }
}
