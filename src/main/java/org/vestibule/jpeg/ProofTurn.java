package org.vestibule.jpeg;

import org.vestibule.base.Turn;

/**
 * What a turn does to a coefficient, as the proof states it: by its frequencies, one by one, apart
 * from the engine's {@link BlockTurn}.
 */
final class ProofTurn {

  private final Turn turn;

  ProofTurn(Turn turn) {
    this.turn = turn;
  }

  /** The zigzag position in the stored block of a coefficient of the displayed one. */
  int stored(int position) {
    int v = Zigzag.natural(position) / 8;
    int u = Zigzag.natural(position) % 8;
    return turn.swapsAxes() ? Zigzag.position(u, v) : position;
  }

  /** True if the coefficient at a position of the displayed block has the other sign. */
  boolean isNegated(int position) {
    int v = Zigzag.natural(position) / 8;
    int u = Zigzag.natural(position) % 8;
    return (turn.flipsHorizontally() && u % 2 == 1) != (turn.flipsVertically() && v % 2 == 1);
  }
}
