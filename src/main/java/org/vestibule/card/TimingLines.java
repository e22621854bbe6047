package org.vestibule.card;

import com.google.zxing.common.PerspectiveTransform;

/**
 * Where a code's rows and columns lie, from its timing lines: between the corner marks light and
 * dark modules alternate along row 6 and column 6 (ISO/IEC 18004, timing pattern; from memory). On
 * a bent card they are not evenly spaced.
 */
final class TimingLines {

  private static final float LINE = 6.5f;
  private static final int FIRST = 7;
  private static final float STEP = 0.1f;

  private final Shades shades;
  private final PerspectiveTransform place;
  private final int side;
  private final float[] columns;
  private final float[] rows;
  private boolean bent;

  TimingLines(Shades shades, PerspectiveTransform place, int side) {
    this.shades = shades;
    this.place = place;
    this.side = side;
    this.columns = along(true);
    this.rows = along(false);
  }

  /** The middles of the columns. */
  float[] columns() {
    return columns.clone();
  }

  /** The middles of the rows. */
  float[] rows() {
    return rows.clone();
  }

  /** True if a timing line said otherwise than {@link #even}. */
  boolean bent() {
    return bent;
  }

  /** Evenly spaced middles. */
  float[] even() {
    float[] middles = new float[side];
    for (int i = 0; i < side; i++) {
      middles[i] = i + 0.5f;
    }
    return middles;
  }

  private float[] along(boolean across) {
    int wanted = side - 2 * FIRST + 1;
    float[] edges = new float[wanted];
    int count = 0;
    float before = above(across, FIRST - 0.7f);
    for (float at = FIRST - 0.7f + STEP; at < side - FIRST + 0.7f; at += STEP) {
      float now = above(across, at);
      if (Float.isNaN(now)) {
        return even();
      }
      if (now < 0 != before < 0) {
        if (count == wanted) {
          return even();
        }
        edges[count++] = at - STEP + STEP * before / (before - now);
      }
      before = now;
    }
    if (count != wanted) {
      return even();
    }
    bent = true;
    float[] middles = even();
    for (int i = FIRST; i < side - FIRST; i++) {
      middles[i] = (edges[i - FIRST] + edges[i - FIRST + 1]) / 2;
    }
    return middles;
  }

  private float above(boolean across, float at) {
    float[] point = across ? new float[] {at, LINE} : new float[] {LINE, at};
    place.transformPoints(point);
    return shades.above(point[0], point[1]);
  }
}
