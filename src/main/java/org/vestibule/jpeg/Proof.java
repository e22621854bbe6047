package org.vestibule.jpeg;

import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;

/**
 * Proves that a result holds exactly the source's coefficients, turned and cropped.
 *
 * <p>This is the slow, plain statement of what a turn is, kept apart from the engine that does it:
 * every displayed block is traced back to its stored block by the samples it covers, and every
 * coefficient by its frequencies.
 */
public final class Proof {

  private static final String ADVICE =
      "don't file the result; keep the source file and report this as a fault of the program";

  private final Coefficients source;
  private final Coefficients result;
  private final Turn turn;
  private final CropBox kept;

  /**
   * What was compared.
   *
   * @param blocks blocks of all components
   * @param kept the part of the displayed picture that the result holds
   */
  public record Proved(long blocks, CropBox kept) {}

  private Proof(Coefficients source, Coefficients result, Turn turn, CropBox kept) {
    this.source = source;
    this.result = result;
    this.turn = turn;
    this.kept = kept;
  }

  /** Compares frame, quantisation and every coefficient through turn, crop and trimming. */
  public static Outcome<Proved> same(Coefficients source, TranscodePlan plan, Coefficients result) {
    CropBox kept = ExpectedPart.of(source.frame(), plan);
    if (kept == null) {
      return differs("nothing of the picture could be kept by this plan");
    }
    Proof proof = new Proof(source, result, plan.turn(), kept);
    String difference = proof.difference();
    return difference == null
        ? Outcome.done(new Proved(proof.blocks(), kept))
        : differs(difference);
  }

  /** Decodes both files, requires the result to be bare baseline, and compares. */
  public static Outcome<Proved> of(byte[] source, TranscodePlan plan, byte[] result) {
    return Coefficients.decode(source)
        .then(
            from ->
                Coefficients.decode(result)
                    .then(
                        to -> {
                          String foreign = foreign(to);
                          return foreign == null ? same(from, plan, to) : differs(foreign);
                        }));
  }

  private static <T> Outcome<T> differs(String what) {
    return Outcome.refused("the result is not the source's picture: " + what, ADVICE);
  }

  /** What the result holds beyond a bare baseline picture, or null. */
  private static @Nullable String foreign(Coefficients result) {
    JpegStructure structure = result.structure();
    if (structure.frame().process() != CodingProcess.BASELINE) {
      return "it is " + structure.frame().process().words();
    }
    if (!structure.embedded().isEmpty()) {
      return "it still carries " + structure.embedded().iterator().next().words();
    }
    if (!structure.trailing().isEmpty() || structure.endMarkerMissing()) {
      return "it does not end with its picture";
    }
    return result.warnings().isEmpty() ? null : result.warnings().get(0);
  }

  private @Nullable String difference() {
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
    if (source.componentCount() != result.componentCount()
        || source.structure().colourModel() != result.structure().colourModel()) {
      return "its colours are "
          + result.structure().colourModel().words()
          + ", "
          + source.structure().colourModel().words()
          + " was expected";
    }
    for (int component = 0; component < source.componentCount(); component++) {
      String found = difference(component);
      if (found != null) {
        return "component " + (component + 1) + " " + found;
      }
    }
    return null;
  }

  private @Nullable String difference(int component) {
    if (samplesPerBlock(source, component, swaps()) != samplesPerBlock(result, component, false)
        || samplesPerBlock(source, component, !swaps())
            != samplesPerBlock(result, component, true)) {
      return "is sampled otherwise";
    }
    for (int row = 0; row < 8; row++) {
      for (int column = 0; column < 8; column++) {
        int expected =
            source.quantisation(component, swaps() ? column : row, swaps() ? row : column);
        if (result.quantisation(component, row, column) != expected) {
          return "has another quantisation step at " + row + ", " + column;
        }
      }
    }
    for (int row = 0; row < result.blocksHigh(component); row++) {
      for (int column = 0; column < result.blocksWide(component); column++) {
        if (!sameBlock(component, row, column)) {
          return "differs in block row " + row + ", column " + column;
        }
      }
    }
    return null;
  }

  private boolean swaps() {
    return turn.swapsAxes();
  }

  /** Picture samples that one block of a component covers along an axis, in 1/12 samples. */
  private static int samplesPerBlock(Coefficients picture, int component, boolean vertical) {
    JpegFrame frame = picture.frame();
    JpegComponent factors = frame.components().get(component);
    if (frame.components().size() == 1) {
      return 8 * 12;
    }
    return vertical
        ? 8 * 12 * frame.maxVertical() / factors.vertical()
        : 8 * 12 * frame.maxHorizontal() / factors.horizontal();
  }

  private boolean sameBlock(int component, int blockRow, int blockColumn) {
    FrameSize stored = source.frame().size();
    int across = samplesPerBlock(result, component, false);
    int down = samplesPerBlock(result, component, true);
    long left = 12L * kept.left() + (long) across * blockColumn;
    long top = 12L * kept.top() + (long) down * blockRow;
    long storedAcross = turn.swapsAxes() ? top : left;
    long storedDown = turn.swapsAxes() ? left : top;
    boolean reversedAcross = swaps() ? turn.flipsVertically() : turn.flipsHorizontally();
    boolean reversedDown = swaps() ? turn.flipsHorizontally() : turn.flipsVertically();
    int sizeAcross = swaps() ? down : across;
    int sizeDown = swaps() ? across : down;
    if (reversedAcross) {
      storedAcross = 12L * stored.width() - storedAcross - sizeAcross;
    }
    if (reversedDown) {
      storedDown = 12L * stored.height() - storedDown - sizeDown;
    }
    if (storedAcross % sizeAcross != 0 || storedDown % sizeDown != 0) {
      return false;
    }
    ComponentBlocks from = source.components().get(component);
    ComponentBlocks to = result.components().get(component);
    return sameValues(
        from.values,
        from.base((int) (storedDown / sizeDown), (int) (storedAcross / sizeAcross)),
        to.values,
        to.base(blockRow, blockColumn));
  }

  private boolean sameValues(short[] from, int fromBase, short[] to, int toBase) {
    for (int position = 0; position < 64; position++) {
      int v = Zigzag.natural(position) / 8;
      int u = Zigzag.natural(position) % 8;
      int stored = from[fromBase + (swaps() ? Zigzag.position(u, v) : position)];
      boolean odd =
          (turn.flipsHorizontally() && u % 2 == 1) != (turn.flipsVertically() && v % 2 == 1);
      if (to[toBase + position] != (odd ? -stored : stored)) {
        return false;
      }
    }
    return true;
  }

  private long blocks() {
    long blocks = 0;
    for (int component = 0; component < result.componentCount(); component++) {
      blocks += (long) result.blocksWide(component) * result.blocksHigh(component);
    }
    return blocks;
  }
}
