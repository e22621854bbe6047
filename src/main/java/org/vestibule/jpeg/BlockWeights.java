package org.vestibule.jpeg;

import org.vestibule.base.Turn;

/**
 * What each coefficient of a block counts for in a {@link PictureWeight}: two random words of 64
 * bits for each frequency of the source's block, with a minus where a turn changes the sign.
 */
final class BlockWeights {

  private static final long FIRST_SEED = 0x5DEECE66DL;
  private static final long SECOND_SEED = 0x2545F4914F6CDD1DL;

  /** Far from both, so that no place has the word of a frequency. */
  private static final long PLACE_SEED = 0x6A09E667F3BCC908L;

  /** By zigzag position of the blocks that are read. */
  final long[] first = new long[64];

  final long[] second = new long[64];

  /**
   * For blocks that are the source's, turned.
   *
   * @param turn from the source to the picture that is read
   */
  BlockWeights(Turn turn) {
    ProofTurn rule = new ProofTurn(turn);
    for (int position = 0; position < 64; position++) {
      int stored = rule.stored(position);
      int sign = rule.isNegated(position) ? -1 : 1;
      first[position] = sign * mixed(FIRST_SEED + stored);
      second[position] = sign * mixed(SECOND_SEED + stored);
    }
  }

  /** The word of a place of a block, always the same. */
  static long place(long place) {
    return mixed(PLACE_SEED + place);
  }

  /** A number of a sequence that looks random: xor-shifts and odd multiplications of a counter. */
  static long mixed(long number) {
    long mixed = (number + 1) * 0x9E3779B97F4A7C15L;
    mixed = (mixed ^ mixed >>> 30) * 0xBF58476D1CE4E5B9L;
    mixed = (mixed ^ mixed >>> 27) * 0x94D049BB133111EBL;
    return mixed ^ mixed >>> 31;
  }
}
