package org.vestibule.card;

import java.util.List;

/**
 * A corner mark of a QR code: a dark square in a light ring in a dark ring.
 *
 * @param x centre, in samples of the picture that was searched
 * @param y centre, in samples of the picture that was searched
 * @param module side of one module, in the same samples
 */
record Finder(float x, float y, float module) {

  Finder scaled(float factor) {
    return new Finder(x * factor, y * factor, module * factor);
  }

  float distance(Finder other) {
    return (float) Math.hypot(x - other.x, y - other.y);
  }

  /** True if two marks could belong to one code or to one card's codes. */
  boolean fits(Finder other) {
    float larger = Math.max(module, other.module);
    float smaller = Math.min(module, other.module);
    float apart = distance(other);
    return larger < LIKE * smaller && apart > NEAREST * smaller && apart < FARTHEST * larger;
  }

  /** True if two of the marks fit each other. */
  static boolean anyFit(List<Finder> marks) {
    for (int i = 0; i < marks.size(); i++) {
      for (int j = 0; j < i; j++) {
        if (marks.get(i).fits(marks.get(j))) {
          return true;
        }
      }
    }
    return false;
  }

  private static final float LIKE = 1.6f;

  /** The marks of the smallest code are 14 modules apart; a slant makes it less. */
  private static final float NEAREST = 8;

  private static final float FARTHEST = 90;
}
