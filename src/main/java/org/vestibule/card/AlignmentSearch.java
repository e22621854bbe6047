package org.vestibule.card;

/**
 * Finds a code's alignment mark, a dark module in a light ring in a dark ring, near the corner that
 * has no corner mark. It tells how a slanted card lies.
 */
final class AlignmentSearch {

  private static final float FROM_EDGE = 6.5f;
  private static final float MARK = 3.5f;

  /** How far from its expected place it is looked for, in modules. */
  private static final float REACH = 5;

  private static final float STEP = 0.4f;

  /** How much brighter than the dark parts the light ring must be at least. */
  private static final int LEAST = 6 * Shades.PARTS;

  private final Shades shades;
  private final float acrossX;
  private final float acrossY;
  private final float downX;
  private final float downY;
  private final float startX;
  private final float startY;

  AlignmentSearch(Shades shades, Finder tl, Finder tr, Finder bl, int side) {
    this.shades = shades;
    float modules = side - 7;
    acrossX = (tr.x() - tl.x()) / modules;
    acrossY = (tr.y() - tl.y()) / modules;
    downX = (bl.x() - tl.x()) / modules;
    downY = (bl.y() - tl.y()) / modules;
    float way = side - FROM_EDGE - MARK;
    startX = tl.x() + way * (acrossX + downX);
    startY = tl.y() + way * (acrossY + downY);
  }

  /** Its middle, or nothing. */
  float[] found() {
    float best = LEAST;
    float[] found = new float[0];
    for (float down = -REACH; down <= REACH; down += STEP) {
      for (float across = -REACH; across <= REACH; across += STEP) {
        float x = startX + across * acrossX + down * downX;
        float y = startY + across * acrossY + down * downY;
        float score = score(x, y);
        if (score > best) {
          best = score;
          found = new float[] {x, y};
        }
      }
    }
    return found;
  }

  /** How much brighter the light ring is than the dark parts. */
  private float score(float x, float y) {
    float light = 0;
    float dark = 0;
    for (int down = -2; down <= 2; down++) {
      for (int across = -2; across <= 2; across++) {
        float above =
            shades.above(x + across * acrossX + down * downX, y + across * acrossY + down * downY);
        if (Float.isNaN(above)) {
          return 0;
        }
        boolean ring = Math.max(Math.abs(across), Math.abs(down)) == 1;
        light += ring ? above / 8 : 0;
        dark += ring ? 0 : above / 17;
      }
    }
    return light - dark;
  }
}
