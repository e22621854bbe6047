package org.vestibule.jpeg;

/**
 * Reads one sequential scan's blocks into tokens in their order, interleaved or not, across restart
 * intervals (ITU-T T.81 A.2).
 */
final class TokenScan {

  private final JpegFrame frame;
  private final TokenPlane[] planes;
  private final LookupTable[] dc;
  private final LookupTable[] ac;
  private final ScanBits in;
  private final SequentialTokens blocks;
  private final Restarts restarts;

  /**
   * For one scan.
   *
   * @param planes the scan's components in its order
   * @param restartInterval MCUs between restart markers; 0 for none
   */
  TokenScan(
      JpegFrame frame,
      TokenPlane[] planes,
      LookupTable[] dc,
      LookupTable[] ac,
      ScanBits in,
      SequentialTokens blocks,
      int restartInterval) {
    this.frame = frame;
    this.planes = planes.clone();
    this.dc = dc.clone();
    this.ac = ac.clone();
    this.in = in;
    this.blocks = blocks;
    this.restarts = new Restarts(restartInterval, in);
  }

  /** Reads all of the scan, which must hold nothing else. */
  void read() throws JpegFault {
    if (planes.length == 1) {
      single(planes[0]);
    } else {
      int wide = BlockGrid.unitsWide(frame);
      int high = BlockGrid.unitsHigh(frame);
      for (int row = 0; row < high; row++) {
        for (int column = 0; column < wide; column++) {
          if (restarts.due()) {
            blocks.reset();
          }
          unit(row, column);
        }
      }
    }
    in.requireEnd();
    for (int part = 0; part < planes.length; part++) {
      planes[part].countPairs(ac[part].pairs);
    }
  }

  private void single(TokenPlane plane) throws JpegFault {
    for (int row = 0; row < plane.grid.high(); row++) {
      for (int column = 0; column < plane.grid.wide(); column++) {
        if (restarts.due()) {
          blocks.reset();
        }
        block(plane, row, column, 0);
      }
    }
  }

  private void unit(int unitRow, int unitColumn) throws JpegFault {
    for (int part = 0; part < planes.length; part++) {
      TokenPlane plane = planes[part];
      int across = plane.component.horizontal();
      int down = plane.component.vertical();
      for (int row = unitRow * down; row < (unitRow + 1) * down; row++) {
        for (int column = unitColumn * across; column < (unitColumn + 1) * across; column++) {
          block(plane, row, column, part);
        }
      }
    }
  }

  private void block(TokenPlane plane, int row, int column, int part) throws JpegFault {
    if (plane.keeps(row, column)) {
      int index = row * plane.grid.wide() + column;
      blocks.block(plane, index, part, dc[part], ac[part]);
    } else {
      blocks.passed(part, dc[part], ac[part]);
    }
  }
}
