package org.vestibule.jpeg;

/** Counts the symbols of a scan, from which its Huffman tables are made. */
final class SymbolCounter extends BlockCoder {

  private final int[][] dcCounts = new int[2][256];
  private final int[][] acCounts = new int[2][256];

  SymbolCounter(BlockTurn turn, int components) {
    super(turn, components);
  }

  @Override
  void dc(int component, int size, int bits) {
    dcCounts[tableOf(component)][size]++;
  }

  @Override
  void ac(int component, int symbol, int bits) {
    acCounts[tableOf(component)][symbol]++;
  }

  /** Brightness has its own tables, both colour components share theirs. */
  static int tableOf(int component) {
    return component == 0 ? 0 : 1;
  }

  HuffmanTable dcTable(int table) throws JpegFault {
    return OptimalHuffman.table(dcCounts[table]);
  }

  HuffmanTable acTable(int table) throws JpegFault {
    return OptimalHuffman.table(acCounts[table]);
  }
}
