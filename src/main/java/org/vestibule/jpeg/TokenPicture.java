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

  /** The scan whose bytes can be kept as they are, or null. */
  @Nullable PlainScan plainScan;

  TokenPicture(JpegStructure structure, boolean transposed) {
    this.structure = structure;
    this.transposed = transposed;
    this.tokens = new Tokens(structure.codedBytes(), MemoryNeed.tokens(structure));
    for (JpegComponent component : structure.frame().components()) {
      planes.add(new TokenPlane(structure.frame(), component));
    }
  }
}
