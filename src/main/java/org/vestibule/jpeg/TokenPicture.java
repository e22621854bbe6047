package org.vestibule.jpeg;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A picture as tokens: what is decoded once, and from which everything else is made.
 *
 * <p>If it was read for a plan that exchanges rows and columns, each block's tokens stand in the
 * order of the transposed block; the blocks themselves stand as stored.
 */
final class TokenPicture {

  final JpegStructure structure;
  final boolean transposed;
  final List<TokenPlane> planes = new ArrayList<>();
  final Tokens tokens;

  /**
   * The AC coefficients of a picture that has no tokens because it is written only once, or null.
   * {@link TokenPlane#place} is then a block's index.
   */
  @Nullable ProgressivePicture untold;

  /** The scan whose bytes can be kept as they are, or null. */
  @Nullable PlainScan plainScan;

  TokenPicture(JpegStructure structure, boolean transposed) {
    this(structure, transposed, new Tokens(structure.codedBytes(), MemoryNeed.tokens(structure)));
  }

  TokenPicture(JpegStructure structure, boolean transposed, Tokens tokens) {
    this.structure = structure;
    this.transposed = transposed;
    this.tokens = tokens;
    for (JpegComponent component : structure.frame().components()) {
      planes.add(new TokenPlane(structure.frame(), component));
    }
  }

  /** The frame with rows and columns exchanged if the blocks are. */
  JpegFrame shownFrame() {
    JpegFrame stored = structure.frame();
    if (!transposed) {
      return stored;
    }
    List<JpegComponent> components = new ArrayList<>();
    for (JpegComponent component : stored.components()) {
      int across = component.vertical();
      int down = component.horizontal();
      components.add(new JpegComponent(component.id(), across, down, component.quantTable()));
    }
    int wide = stored.size().height();
    int high = stored.size().width();
    FrameSize size = new FrameSize(wide, high);
    return new JpegFrame(stored.process(), stored.precisionBits(), size, components);
  }

  /** A component's quantisation steps in the order of its tokens' blocks. */
  int[] shownQuantisation(int component) {
    int[] stored = planes.get(component).quantisation;
    int[] places = ScatteredBlock.placesFor(transposed);
    int[] shown = new int[64];
    for (int position = 0; position < 64; position++) {
      shown[places[position]] = stored[position];
    }
    return shown;
  }
}
