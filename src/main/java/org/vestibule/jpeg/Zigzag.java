package org.vestibule.jpeg;

/** The zigzag order of a block's 64 coefficients (ITU-T T.81 Figure A.6). */
final class Zigzag {

  private static final int[] NATURAL = build();
  private static final int[] POSITION = invert();

  private Zigzag() {}

  /** Row times eight plus column of the coefficient at a zigzag position. */
  static int natural(int position) {
    return NATURAL[position];
  }

  /** Zigzag position of the coefficient at a row (vertical frequency) and column. */
  static int position(int row, int column) {
    return POSITION[8 * row + column];
  }

  /** Walks the anti-diagonals, up and down in turn. */
  private static int[] build() {
    int[] natural = new int[64];
    int position = 0;
    for (int diagonal = 0; diagonal < 15; diagonal++) {
      for (int step = 0; step <= diagonal; step++) {
        int row = diagonal % 2 == 0 ? diagonal - step : step;
        int column = diagonal - row;
        if (row < 8 && column < 8) {
          natural[position++] = 8 * row + column;
        }
      }
    }
    return natural;
  }

  private static int[] invert() {
    int[] position = new int[64];
    for (int i = 0; i < 64; i++) {
      position[NATURAL[i]] = i;
    }
    return position;
  }
}
