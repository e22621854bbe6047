package org.vestibule.jpeg;

import java.util.ArrayList;
import java.util.List;

/** Visits the blocks of a result in the order of its scans (ITU-T T.81 A.2). */
final class BlockWalk {

  private static final int MOST_BLOCKS_PER_UNIT = 10;

  private final JpegFrame frame;
  private final List<Plane> planes = new ArrayList<>();

  /**
   * Where the blocks of one component come from.
   *
   * @param rows by block row of the result, its share of the stored block's index
   * @param columns by block column
   */
  @SuppressWarnings("ArrayRecordComponent") // Read in the innermost loops.
  private record Plane(
      TokenPlane source, JpegComponent target, BlockGrid grid, int[] rows, int[] columns) {}

  BlockWalk(TokenPicture picture, Layout layout) {
    this.frame = layout.frame();
    for (int i = 0; i < picture.planes.size(); i++) {
      TokenPlane source = picture.planes.get(i);
      JpegComponent target = frame.components().get(i);
      BlockGrid grid = BlockGrid.of(frame, target);
      int[] rows = layout.rowShares(source.grid, target, grid);
      int[] columns = layout.columnShares(source.grid, target, grid);
      planes.add(new Plane(source, target, grid, rows, columns));
    }
  }

  /** One interleaved scan, or one for each component where an MCU would have too many blocks. */
  List<int[]> scans() {
    int blocks = 0;
    int[] all = new int[planes.size()];
    List<int[]> single = new ArrayList<>();
    for (int i = 0; i < all.length; i++) {
      JpegComponent component = planes.get(i).target();
      blocks += component.horizontal() * component.vertical();
      all[i] = i;
      single.add(new int[] {i});
    }
    return blocks > MOST_BLOCKS_PER_UNIT ? single : List.of(all);
  }

  /** True if the result has every block that was kept of the source. */
  boolean takesAll() {
    for (Plane plane : planes) {
      if (plane.rows().length * plane.columns().length != plane.source().keptBlocks()) {
        return false;
      }
    }
    return true;
  }

  /** Rows of MCUs. */
  int rows() {
    return BlockGrid.unitsHigh(frame);
  }

  /** Hands the blocks of a scan to the sink. */
  void scan(int[] components, BlockSink sink) throws JpegFault {
    scan(components, 1, sink);
  }

  /**
   * Hands the blocks of some rows of a scan to the sink.
   *
   * @param step of so many rows of MCUs the first is taken
   */
  void scan(int[] components, int step, BlockSink sink) throws JpegFault {
    sink.start();
    if (components.length == 1) {
      single(components[0], step, sink);
      return;
    }
    int wide = BlockGrid.unitsWide(frame);
    int high = BlockGrid.unitsHigh(frame);
    for (int row = 0; row < high; row += step) {
      for (int column = 0; column < wide; column++) {
        for (int component : components) {
          unit(component, row, column, sink);
        }
      }
    }
  }

  private void single(int component, int step, BlockSink sink) throws JpegFault {
    Plane plane = planes.get(component);
    for (int row = 0; row < plane.rows().length; row += step) {
      for (int column : plane.columns()) {
        int index = plane.rows()[row] + column;
        sink.block(component, plane.source().dc[index], plane.source().place[index]);
      }
    }
  }

  /**
   * Blocks beyond the picture are never taken from the source: they could show what was cropped.
   */
  private void unit(int component, int unitRow, int unitColumn, BlockSink sink) throws JpegFault {
    Plane plane = planes.get(component);
    int[] rows = plane.rows();
    int[] columns = plane.columns();
    int across = plane.target().horizontal();
    int down = plane.target().vertical();
    for (int row = unitRow * down; row < (unitRow + 1) * down; row++) {
      for (int column = unitColumn * across; column < (unitColumn + 1) * across; column++) {
        if (row < rows.length && column < columns.length) {
          int index = rows[row] + columns[column];
          sink.block(component, plane.source().dc[index], plane.source().place[index]);
        } else {
          sink.padding(component);
        }
      }
    }
  }
}
