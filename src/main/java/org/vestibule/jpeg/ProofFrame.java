package org.vestibule.jpeg;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Turn;

/** The proof's geometry: size, sampling and tables of a result, and where its blocks come from. */
final class ProofFrame {

  private final JpegStructure source;
  private final JpegStructure result;
  private final Turn turn;
  private final CropBox kept;

  ProofFrame(JpegStructure source, Turn turn, CropBox kept, JpegStructure result) {
    this.source = source;
    this.result = result;
    this.turn = turn;
    this.kept = kept;
  }

  /** What is wrong with size, colours or sampling, or null. */
  @Nullable String difference() {
    FrameSize size = result.frame().size();
    if (size.width() != kept.width() || size.height() != kept.height()) {
      return "it is "
          + size.width()
          + " x "
          + size.height()
          + " samples, "
          + kept.width()
          + " x "
          + kept.height()
          + " were expected";
    }
    if (source.frame().components().size() != result.frame().components().size()
        || source.colourModel() != result.colourModel()) {
      return "its colours are "
          + result.colourModel().words()
          + ", "
          + source.colourModel().words()
          + " was expected";
    }
    for (int component = 0; component < source.frame().components().size(); component++) {
      if (samplesPerBlock(source, component, swaps()) != samplesPerBlock(result, component, false)
          || samplesPerBlock(source, component, !swaps())
              != samplesPerBlock(result, component, true)) {
        return "component " + (component + 1) + " is sampled otherwise";
      }
    }
    return null;
  }

  /** What is wrong with the quantisation tables, or null. */
  @Nullable String quantisation(List<int[]> from, List<int[]> to) {
    for (int component = 0; component < from.size(); component++) {
      for (int row = 0; row < 8; row++) {
        for (int column = 0; column < 8; column++) {
          int stored = swaps() ? Zigzag.position(column, row) : Zigzag.position(row, column);
          if (to.get(component)[Zigzag.position(row, column)] != from.get(component)[stored]) {
            return "component "
                + (component + 1)
                + " has another quantisation step at "
                + row
                + ", "
                + column;
          }
        }
      }
    }
    return null;
  }

  /** Picture samples that one block of a component covers along an axis, in 1/12 samples. */
  private static int samplesPerBlock(JpegStructure picture, int component, boolean vertical) {
    JpegFrame frame = picture.frame();
    JpegComponent factors = frame.components().get(component);
    if (frame.components().size() == 1) {
      return 8 * 12;
    }
    return vertical
        ? 8 * 12 * frame.maxVertical() / factors.vertical()
        : 8 * 12 * frame.maxHorizontal() / factors.horizontal();
  }

  /** True if rows of the result are columns of the source. */
  boolean swaps() {
    return turn.swapsAxes();
  }

  /**
   * For each block of the result along an axis, the place of its block along the source's axis that
   * becomes this one; -1 where it covers no whole block.
   *
   * @param vertical true for the result's vertical axis
   */
  int[] stored(int component, boolean vertical) {
    int size = samplesPerBlock(result, component, vertical);
    FrameSize stored = source.frame().size();
    long length = 12L * (vertical != swaps() ? stored.height() : stored.width());
    boolean reversed = vertical ? turn.flipsVertically() : turn.flipsHorizontally();
    int[] places = new int[vertical ? grid(component).high() : grid(component).wide()];
    for (int i = 0; i < places.length; i++) {
      long from = 12L * (vertical ? kept.top() : kept.left()) + (long) size * i;
      long place = reversed ? length - from - size : from;
      places[i] = place % size == 0 ? (int) (place / size) : -1;
    }
    return places;
  }

  /** Components of the result. */
  int components() {
    return result.frame().components().size();
  }

  /** Blocks of all components of the result. */
  long blocks() {
    long blocks = 0;
    for (int component = 0; component < result.frame().components().size(); component++) {
      blocks += (long) grid(component).wide() * grid(component).high();
    }
    return blocks;
  }

  private BlockGrid grid(int component) {
    return BlockGrid.of(result.frame(), result.frame().components().get(component));
  }
}
