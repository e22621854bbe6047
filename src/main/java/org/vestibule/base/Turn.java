package org.vestibule.base;

import org.jspecify.annotations.Nullable;

/**
 * The eight ways to lay down a rectangular picture: quarter turns and reflections (the dihedral
 * group of order eight). Angles are clockwise as seen by the viewer.
 *
 * <p>Each is written as "transpose first if it says so, then flip": {@code swaps} exchanges rows
 * and columns, then {@code flipsHorizontally} reverses each row, then {@code flipsVertically}
 * reverses the order of rows.
 */
public enum Turn {
  NONE(false, false, false),
  FLIP_HORIZONTAL(false, true, false),
  ROTATE_180(false, true, true),
  FLIP_VERTICAL(false, false, true),
  TRANSPOSE(true, false, false),
  ROTATE_90(true, true, false),
  TRANSVERSE(true, true, true),
  ROTATE_270(true, false, true);

  private static final Turn[] BY_EXIF = values();

  private final boolean swaps;
  private final boolean flipsHorizontally;
  private final boolean flipsVertically;

  Turn(boolean swaps, boolean flipsHorizontally, boolean flipsVertically) {
    this.swaps = swaps;
    this.flipsHorizontally = flipsHorizontally;
    this.flipsVertically = flipsVertically;
  }

  /**
   * The turn that shows a picture upright, from Exif Orientation (CIPA DC-008, tag 0x0112; from
   * memory).
   *
   * @param orientation 1 to 8
   */
  public static Turn ofExif(int orientation) {
    if (orientation < 1 || orientation > 8) {
      throw new IllegalArgumentException("Exif Orientation must be 1 to 8 but was " + orientation);
    }
    return BY_EXIF[orientation - 1];
  }

  /** The turn by which a viewer shows a picture: as Exif says, or not at all where it is silent. */
  public static Turn asShown(@Nullable Integer orientation) {
    return orientation == null ? NONE : ofExif(orientation);
  }

  private static Turn of(boolean swaps, boolean flipsHorizontally, boolean flipsVertically) {
    for (Turn turn : BY_EXIF) {
      if (turn.swaps == swaps
          && turn.flipsHorizontally == flipsHorizontally
          && turn.flipsVertically == flipsVertically) {
        return turn;
      }
    }
    throw new IllegalStateException("no turn with these parts");
  }

  /** True if width and height change places. */
  public boolean swapsAxes() {
    return swaps;
  }

  /** True if, after any exchange of rows and columns, each row is reversed. */
  public boolean flipsHorizontally() {
    return flipsHorizontally;
  }

  /** True if, after any exchange of rows and columns, the order of rows is reversed. */
  public boolean flipsVertically() {
    return flipsVertically;
  }

  /** True if the turn is a reflection, so that a picture becomes its mirror image. */
  public boolean reflects() {
    return swaps ^ flipsHorizontally ^ flipsVertically;
  }

  /** This turn followed by another, as one. */
  public Turn then(Turn next) {
    boolean horizontal = next.swaps ? flipsVertically : flipsHorizontally;
    boolean vertical = next.swaps ? flipsHorizontally : flipsVertically;
    return of(
        swaps ^ next.swaps, horizontal ^ next.flipsHorizontally, vertical ^ next.flipsVertically);
  }

  /** The turn that undoes this one. */
  public Turn inverse() {
    for (Turn turn : BY_EXIF) {
      if (then(turn) == NONE) {
        return turn;
      }
    }
    throw new IllegalStateException("a turn without an inverse");
  }
}
