package org.vestibule.jpeg;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Reads one scan's blocks in their order, interleaved or not, across restart intervals (T.81 A.2).
 */
final class ScanReader {

  private final JpegFrame frame;
  private final ScanHeader header;
  private final List<ComponentBlocks> components;
  private final BlockDecoder decoder;
  private final BitReader in;
  private final int restartInterval;
  private int unitsToRestart;
  private int nextRestart;
  private int wholeRows;
  private boolean tidy = true;
  private final @Nullable RowSink sink;

  ScanReader(
      JpegFrame frame,
      ScanHeader header,
      List<ComponentBlocks> components,
      BlockDecoder decoder,
      BitReader in,
      int restartInterval,
      @Nullable RowSink sink) {
    this.sink = sink;
    this.frame = frame;
    this.header = header;
    this.components = components;
    this.decoder = decoder;
    this.in = in;
    this.restartInterval = restartInterval;
    this.unitsToRestart = restartInterval;
  }

  /**
   * Reads all of the scan.
   *
   * @return true if the data held nothing beyond its blocks
   */
  boolean read() throws JpegFault {
    if (header.interleaved()) {
      interleaved();
    } else {
      single();
    }
    return tidy && in.atEnd();
  }

  private void interleaved() throws JpegFault {
    int wide = BlockGrid.unitsWide(frame);
    int high = BlockGrid.unitsHigh(frame);
    for (int row = 0; row < high; row++) {
      for (int column = 0; column < wide; column++) {
        restartIfDue();
        for (int part = 0; part < header.components().size(); part++) {
          unit(part, row, column);
        }
        requireData(row, high);
      }
      wholeRows = row + 1;
      for (ScanHeader.Part part : header.components()) {
        int down = components.get(part.index()).component.vertical();
        complete(part.index(), row * down, down);
      }
    }
  }

  /** Rows of MCUs that were read. */
  int wholeRows() {
    return wholeRows;
  }

  /** Samples of the picture that a row of MCUs is high. */
  int rowHeight() {
    if (header.interleaved() || frame.components().size() == 1) {
      return frame.unitHeight();
    }
    JpegComponent component = components.get(header.components().get(0).index()).component;
    return frame.unitHeight() / component.vertical();
  }

  /** Hands over rows of a component that are complete. */
  private void complete(int component, int firstRow, int rows) {
    if (sink == null) {
      return;
    }
    ComponentBlocks blocks = components.get(component);
    for (int row = firstRow; row < Math.min(firstRow + rows, blocks.grid.high()); row++) {
      sink.row(component, row, blocks);
    }
    blocks.clear();
  }

  private void unit(int part, int row, int column) throws JpegFault {
    ComponentBlocks blocks = components.get(header.components().get(part).index());
    int across = blocks.component.horizontal();
    int down = blocks.component.vertical();
    for (int y = 0; y < down; y++) {
      int base = blocks.base(row * down + y, column * across);
      for (int x = 0; x < across; x++) {
        decoder.block(in, part, blocks.values, base + (x << 6));
      }
    }
  }

  private void single() throws JpegFault {
    ComponentBlocks blocks = components.get(header.components().get(0).index());
    for (int row = 0; row < blocks.grid.high(); row++) {
      int base = blocks.base(row, 0);
      for (int column = 0; column < blocks.grid.wide(); column++) {
        restartIfDue();
        decoder.block(in, 0, blocks.values, base + (column << 6));
        requireData(row, blocks.grid.high());
      }
      wholeRows = row + 1;
      complete(header.components().get(0).index(), row, 1);
    }
  }

  private void requireData(int row, int rows) throws JpegFault {
    if (in.overrun()) {
      throw JpegFault.damaged(
          "the picture's data ends too early, near byte "
              + in.position()
              + ", in row "
              + (row + 1)
              + " of "
              + rows
              + " block rows");
    }
  }

  private void restartIfDue() throws JpegFault {
    if (restartInterval == 0) {
      return;
    }
    if (unitsToRestart == 0) {
      int from = in.position();
      tidy &= in.atRestart();
      int found = in.restart();
      if (found != nextRestart) {
        throw JpegFault.damaged(
            "restart marker "
                + nextRestart
                + " was expected near byte "
                + from
                + " but "
                + (found < 0 ? "none" : Integer.toString(found))
                + " was found");
      }
      nextRestart = (nextRestart + 1) & 7;
      unitsToRestart = restartInterval;
      decoder.reset();
    }
    unitsToRestart--;
  }
}
