package org.vestibule.jpeg;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Turn;

/**
 * Compares what source and result weigh ({@link PictureWeight}), and their quantisation. A block of
 * the result is weighed at the place in the source that it came from.
 */
final class WeighedProof {

  private final byte[] source;
  private final JpegStructure from;
  private final Turn turn;
  private final ProofFrame frames;

  /** The source's blocks by component. */
  private final List<BlockGrid> grids = new ArrayList<>();

  WeighedProof(byte[] source, JpegStructure from, Turn turn, ProofFrame frames) {
    this.source = source;
    this.from = from;
    this.turn = turn;
    this.frames = frames;
    for (JpegComponent component : from.frame().components()) {
      grids.add(BlockGrid.of(from.frame(), component));
    }
  }

  /**
   * True if both weigh the same. False proves nothing: one of them may only be odd.
   *
   * @param known what all of the source weighs, if it was weighed before
   */
  boolean holds(byte[] result, JpegStructure to, @Nullable PictureWeight known) {
    try {
      List<PlaneWeigher> weighers = new ArrayList<>();
      BlockWeights weights = new BlockWeights(turn);
      for (int i = 0; i < grids.size(); i++) {
        weighers.add(new PlaneWeigher(weights, i, shares(i, true), shares(i, false)));
      }
      List<int[]> tables = PictureWeight.read(result, to, weighers).quantisation();
      PictureWeight found = PictureWeight.of(result, weighers);
      if (found.blocks() != frames.blocks()) {
        return false;
      }
      PictureWeight wanted =
          known != null && known.length() == source.length && known.blocks() == found.blocks()
              ? known
              : ofSource();
      return wanted.first() == found.first()
          && wanted.second() == found.second()
          && wanted.blocks() == found.blocks()
          && frames.quantisation(Tables.of(source, from), tables) == null;
    } catch (JpegFault odd) {
      return false;
    }
  }

  /** Weighs those blocks of the source that the result should have. */
  private PictureWeight ofSource() throws JpegFault {
    List<PlaneWeigher> weighers = new ArrayList<>();
    BlockWeights weights = new BlockWeights(Turn.NONE);
    for (int i = 0; i < grids.size(); i++) {
      int wide = grids.get(i).wide();
      int[] rows = taken(frames.stored(i, !frames.swaps()), grids.get(i).high());
      int[] columns = taken(frames.stored(i, frames.swaps()), wide);
      for (int row = 0; row < rows.length; row++) {
        rows[row] = rows[row] < 0 ? -1 : row * wide;
      }
      weighers.add(new PlaneWeigher(weights, i, rows, columns));
    }
    PictureWeight.read(source, from, weighers);
    return PictureWeight.of(source, weighers);
  }

  /** Each place along an axis of the source that is taken; -1 for the others. */
  private static int[] taken(int[] stored, int length) {
    int[] places = new int[length];
    Arrays.fill(places, -1);
    for (int place : stored) {
      if (place >= 0) {
        places[place] = place;
      }
    }
    return places;
  }

  /** What each place along an axis of the result adds to the place in the source. */
  private int[] shares(int component, boolean vertical) {
    int[] shares = frames.stored(component, vertical);
    boolean down = vertical != frames.swaps();
    for (int i = 0; i < shares.length; i++) {
      shares[i] = down && shares[i] >= 0 ? shares[i] * grids.get(component).wide() : shares[i];
    }
    return shares;
  }

  /** Reads a picture's tables and passes over its scans. */
  private static final class Tables extends PictureWalk {

    private Tables(byte[] bytes, JpegStructure structure) {
      super(bytes, structure);
    }

    static List<int[]> of(byte[] bytes, JpegStructure structure) throws JpegFault {
      Tables tables = new Tables(bytes, structure);
      tables.segments();
      return List.of(tables.quantisation);
    }

    @Override
    void scan(ScanHeader header, JpegSegment segment) {
      // Only the tables in force when it starts are wanted.
    }
  }
}
