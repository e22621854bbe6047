package org.vestibule.samples;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * One invented mouth: which teeth it has and what is to be seen on them, so placed that left and
 * right, front and back can't be confused.
 */
record Mouth(int seed, int shade, boolean milk, Map<Integer, Set<Mark>> marks) {

  /** What is to be seen on a tooth. */
  enum Mark {
    MISSING,
    GOLD_ONLAY,
    GREY_FILLING,
    WHITE_FILLING,
    CARIES,
    DISCOLOURED,
    FRACTURED,
    CROWDED
  }

  Mouth {
    marks = Map.copyOf(marks);
  }

  /** Gold on 16, grey on 26, 24 gone, 43 crowded, 21 dark, 11 chipped, 36 grey. */
  static Mouth marked() {
    return new Mouth(
        11,
        0xede3cc,
        false,
        Map.of(
            16, Set.of(Mark.GOLD_ONLAY),
            26, Set.of(Mark.GREY_FILLING),
            24, Set.of(Mark.MISSING),
            43, Set.of(Mark.CROWDED),
            21, Set.of(Mark.DISCOLOURED),
            11, Set.of(Mark.FRACTURED),
            36, Set.of(Mark.GREY_FILLING)));
  }

  /** Decay on 46, an old filling on 37, 35 gone. */
  static Mouth beforeFilling() {
    return new Mouth(
        23,
        0xf0e8d6,
        false,
        Map.of(
            46, Set.of(Mark.CARIES),
            37, Set.of(Mark.GREY_FILLING),
            35, Set.of(Mark.MISSING),
            14, Set.of(Mark.WHITE_FILLING)));
  }

  /** The same mouth with 46 filled. */
  static Mouth afterFilling() {
    return new Mouth(
        23,
        0xf0e8d6,
        false,
        Map.of(
            46, Set.of(Mark.WHITE_FILLING),
            37, Set.of(Mark.GREY_FILLING),
            35, Set.of(Mark.MISSING),
            14, Set.of(Mark.WHITE_FILLING)));
  }

  /** Milk teeth: 51 dark after a fall, 62 gone, decay on 55, a grey filling on 74. */
  static Mouth child() {
    return new Mouth(
        37,
        0xf4f0e6,
        true,
        Map.of(
            51, Set.of(Mark.DISCOLOURED),
            62, Set.of(Mark.MISSING),
            55, Set.of(Mark.CARIES),
            74, Set.of(Mark.GREY_FILLING)));
  }

  boolean has(int tooth, Mark mark) {
    return marks.getOrDefault(tooth, Set.of()).contains(mark);
  }

  /** The teeth of one arch from the patient's right to left, gaps included. */
  List<Integer> arch(boolean upper) {
    int right = milk ? (upper ? 5 : 8) : upper ? 1 : 4;
    int left = milk ? (upper ? 6 : 7) : upper ? 2 : 3;
    int each = milk ? 5 : 7;
    return IntStream.concat(
            IntStream.iterate(each, n -> n >= 1, n -> n - 1).map(n -> right * 10 + n),
            IntStream.rangeClosed(1, each).map(n -> left * 10 + n))
        .boxed()
        .toList();
  }

  /** True for the quadrants on the patient's left. */
  static boolean onLeft(int tooth) {
    int quadrant = tooth / 10;
    return quadrant == 2 || quadrant == 3 || quadrant == 6 || quadrant == 7;
  }
}
