package org.vestibule.jpeg;

import java.util.ArrayList;
import java.util.List;

/** Visits the blocks of a result in the order of its scans (ITU-T T.81 A.2). */
final class BlockWalk {

  private static final int MOST_BLOCKS_PER_UNIT = 10;

  private final List<ComponentBlocks> sources;
  private final Layout layout;
  private final List<BlockGrid> grids = new ArrayList<>();

  BlockWalk(Coefficients picture, Layout layout) {
    this.sources = picture.components();
    this.layout = layout;
    for (JpegComponent component : layout.frame().components()) {
      grids.add(BlockGrid.of(layout.frame(), component));
    }
  }

  /** One interleaved scan, or one for each component where an MCU would have too many blocks. */
  List<int[]> scans() {
    int blocks = 0;
    int count = grids.size();
    int[] all = new int[count];
    List<int[]> single = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      JpegComponent component = layout.frame().components().get(i);
      blocks += component.horizontal() * component.vertical();
      all[i] = i;
      single.add(new int[] {i});
    }
    return blocks > MOST_BLOCKS_PER_UNIT ? single : List.of(all);
  }

  /** Hands the blocks of a scan to the coder. */
  void scan(int[] components, BlockCoder coder) throws JpegFault {
    if (components.length == 1) {
      single(components[0], coder);
      return;
    }
    int wide = BlockGrid.unitsWide(layout.frame());
    int high = BlockGrid.unitsHigh(layout.frame());
    for (int row = 0; row < high; row++) {
      for (int column = 0; column < wide; column++) {
        for (int component : components) {
          unit(component, row, column, coder);
        }
      }
    }
  }

  private void single(int component, BlockCoder coder) throws JpegFault {
    BlockGrid grid = grids.get(component);
    for (int row = 0; row < grid.high(); row++) {
      for (int column = 0; column < grid.wide(); column++) {
        block(component, row, column, coder);
      }
    }
  }

  private void unit(int component, int row, int column, BlockCoder coder) throws JpegFault {
    JpegComponent factors = layout.frame().components().get(component);
    for (int y = 0; y < factors.vertical(); y++) {
      for (int x = 0; x < factors.horizontal(); x++) {
        block(component, row * factors.vertical() + y, column * factors.horizontal() + x, coder);
      }
    }
  }

  /**
   * Blocks beyond the picture are never taken from the source: they could show what was cropped.
   */
  private void block(int component, int row, int column, BlockCoder coder) throws JpegFault {
    BlockGrid grid = grids.get(component);
    if (row >= grid.high() || column >= grid.wide()) {
      coder.padding(component);
      return;
    }
    ComponentBlocks source = sources.get(component);
    JpegComponent target = layout.frame().components().get(component);
    coder.block(component, source.values, layout.sourceBase(source, target, row, column));
  }
}
