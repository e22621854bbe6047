package org.vestibule.jpeg;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Turn;

/**
 * How the blocks of a result are found in the source: turn, crop and trimming as geometry.
 *
 * @param turn from the stored to the displayed picture
 * @param across the displayed picture's horizontal axis
 * @param down its vertical axis
 * @param frame frame of the result: baseline, component ids 1 to n, factors exchanged as the axes
 */
record Layout(Turn turn, Axis across, Axis down, JpegFrame frame) {

  static Layout of(JpegFrame source, TranscodePlan plan) throws JpegFault {
    Turn turn = plan.turn();
    boolean swaps = turn.swapsAxes();
    int width = swaps ? source.size().height() : source.size().width();
    int height = swaps ? source.size().width() : source.size().height();
    int unitWidth = swaps ? source.unitHeight() : source.unitWidth();
    int unitHeight = swaps ? source.unitWidth() : source.unitHeight();
    CropBox wanted = wanted(plan.crop(), width, height);
    Axis across =
        Axis.lay(width, unitWidth, turn.flipsHorizontally(), wanted.left(), wanted.width());
    Axis down = Axis.lay(height, unitHeight, turn.flipsVertically(), wanted.top(), wanted.height());
    requireSomething(across, down);
    if (!plan.mayTrim()) {
      requireNoTrim(across, down);
    }
    return new Layout(turn, across, down, frame(source, swaps, across.length(), down.length()));
  }

  /**
   * For each block row of a component of the result, its share of the stored block's index; that
   * and the share of the column make up the index.
   */
  int[] rowShares(BlockGrid stored, JpegComponent target, BlockGrid grid) {
    return shares(
        down, factor(target.vertical()), grid.high(), turn.swapsAxes() ? 1 : stored.wide());
  }

  /** For each block column of a component of the result, its share of the stored block's index. */
  int[] columnShares(BlockGrid stored, JpegComponent target, BlockGrid grid) {
    return shares(
        across, factor(target.horizontal()), grid.wide(), turn.swapsAxes() ? stored.wide() : 1);
  }

  /** Lets a picture keep the blocks of the result only; before any is read. */
  void narrow(TokenPicture picture) {
    for (int i = 0; i < picture.planes.size(); i++) {
      TokenPlane plane = picture.planes.get(i);
      JpegComponent target = frame.components().get(i);
      BlockGrid grid = BlockGrid.of(frame, target);
      int[] rows = rowShares(plane.grid, target, grid);
      int[] columns = columnShares(plane.grid, target, grid);
      int[] across = turn.swapsAxes() ? rows : columns;
      int[] down = turn.swapsAxes() ? columns : rows;
      int left = Math.min(across[0], across[across.length - 1]);
      int top = Math.min(down[0], down[down.length - 1]) / plane.grid.wide();
      plane.keepOnly(new BlockBox(left, top, across.length, down.length));
    }
  }

  private int factor(int sampling) {
    return frame.components().size() == 1 ? 1 : sampling;
  }

  CropBox effectiveCrop() {
    return new CropBox(across.start(), down.start(), across.length(), down.length());
  }

  private static int[] shares(Axis axis, int factor, int blocks, int step) {
    int[] shares = new int[blocks];
    int place = axis.unitsBefore() * factor;
    for (int i = 0; i < blocks; i++, place++) {
      shares[i] = step * (axis.reversed() ? axis.wholeUnits() * factor - 1 - place : place);
    }
    return shares;
  }

  private static CropBox wanted(@Nullable CropBox crop, int width, int height) throws JpegFault {
    if (crop == null) {
      return new CropBox(0, 0, width, height);
    }
    if (crop.right() > width || crop.bottom() > height) {
      throw JpegFault.unsuited(
          "the crop of "
              + crop.words()
              + " reaches outside the displayed picture of "
              + width
              + " x "
              + height,
          "give a crop inside the picture");
    }
    return crop;
  }

  private static void requireSomething(Axis across, Axis down) throws JpegFault {
    if (across.length() == 0 || down.length() == 0) {
      boolean columns = across.length() == 0;
      Axis axis = columns ? across : down;
      throw JpegFault.unsuited(
          "none of the "
              + axis.trimmed()
              + (columns ? " columns" : " rows")
              + " can be turned without loss: they lie in an edge block narrower than "
              + axis.unit(),
          "keep the photo as it was taken, or choose a larger crop");
    }
  }

  private static void requireNoTrim(Axis across, Axis down) throws JpegFault {
    if (across.trimmed() == 0 && down.trimmed() == 0) {
      return;
    }
    List<String> sizes = new ArrayList<>();
    List<String> drops = new ArrayList<>();
    if (across.trimmed() > 0) {
      sizes.add(across.samples() + " samples wide as shown, not a multiple of " + across.unit());
      drops.add("the first " + across.trimmed() + " columns");
    }
    if (down.trimmed() > 0) {
      sizes.add(down.samples() + " samples high as shown, not a multiple of " + down.unit());
      drops.add("the first " + down.trimmed() + " rows");
    }
    throw JpegFault.unsuited(
        "the picture can't be turned whole without loss: it is " + String.join(" and ", sizes),
        "allow trimming to drop "
            + String.join(" and ", drops)
            + " of the turned picture, or crop them away");
  }

  private static JpegFrame frame(JpegFrame source, boolean swaps, int width, int height) {
    List<JpegComponent> components = new ArrayList<>();
    for (JpegComponent component : source.components()) {
      int across = swaps ? component.vertical() : component.horizontal();
      int down = swaps ? component.horizontal() : component.vertical();
      boolean single = source.components().size() == 1;
      components.add(
          new JpegComponent(
              components.size() + 1,
              single ? 1 : across,
              single ? 1 : down,
              component.quantTable()));
    }
    return new JpegFrame(CodingProcess.BASELINE, 8, new FrameSize(width, height), components);
  }
}
