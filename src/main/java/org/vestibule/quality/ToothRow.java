package org.vestibule.quality;

import org.jspecify.annotations.Nullable;

/**
 * How a row of teeth lies in a picture.
 *
 * <p>What is tooth-coloured is looked at in cells of {@link #CELL} pixels, so that the gaps between
 * teeth don't part them. The largest patch of cells that touch is the row, if it is long, and if it
 * lies in the middle of the picture: a row that is cut off at one side only is bent to that side
 * and seems to slant. Its direction is the axis about which its pixels scatter least (principal
 * axis of the second moments), which for a symmetric patch is its axis of symmetry.
 *
 * @param degrees between the row and the nearer edge of the picture, 0 to 45; the same however the
 *     picture is turned by quarters or mirrored
 * @param elongation its length by its height, as standard deviations; above 1
 * @param offCentre how far its centre lies from the picture's middle along the row, as a part of
 *     the picture's size in that direction, 0 to 0.5
 */
public record ToothRow(double degrees, double elongation, double offCentre) {

  static final int CELL = 8;

  /** Share of a cell that must be tooth-coloured. */
  private static final double LEAST_SHARE = 0.3;

  /** Shorter patches have no direction of their own (chosen, no source). */
  private static final double LEAST_ELONGATION = 1.7;

  /** Further from the middle a row is cut off unevenly (chosen, no source). */
  private static final double MOST_OFF_CENTRE = 0.1;

  /**
   * Finds the row.
   *
   * @param tooth whether a pixel is tooth-coloured, row by row
   * @return null if nothing is tooth-coloured
   */
  static @Nullable ToothRow in(boolean[] tooth, int width, int height) {
    int[] counts = counts(tooth, width, height);
    int columns = width / CELL;
    boolean[] patch = largest(counts, columns);
    double[] sums = new double[6];
    for (int i = 0; i < counts.length; i++) {
      if (patch[i]) {
        int row = i / columns;
        add(sums, counts[i], i % columns, row);
      }
    }
    return sums[0] == 0 ? null : of(sums, columns, counts.length / columns);
  }

  /** True if it is long and central enough to say whether it is level. */
  boolean isRow() {
    return elongation >= LEAST_ELONGATION && offCentre <= MOST_OFF_CENTRE;
  }

  private static int[] counts(boolean[] tooth, int width, int height) {
    int columns = width / CELL;
    int rows = height / CELL;
    int[] counts = new int[columns * rows];
    for (int y = 0; y < rows * CELL; y++) {
      int cells = y / CELL * columns;
      for (int x = 0; x < columns * CELL; x++) {
        counts[cells + x / CELL] += tooth[y * width + x] ? 1 : 0;
      }
    }
    return counts;
  }

  /** The cells of the patch that holds the most. */
  private static boolean[] largest(int[] counts, int columns) {
    int[] patchOf = new int[counts.length];
    int[] queue = new int[counts.length];
    int best = 0;
    int most = 0;
    int patches = 0;
    for (int i = 0; i < counts.length; i++) {
      if (isTooth(counts[i]) && patchOf[i] == 0) {
        int held = fill(i, ++patches, counts, columns, patchOf, queue);
        if (held > most) {
          most = held;
          best = patches;
        }
      }
    }
    boolean[] largest = new boolean[counts.length];
    for (int i = 0; i < counts.length; i++) {
      largest[i] = best > 0 && patchOf[i] == best;
    }
    return largest;
  }

  private static boolean isTooth(int count) {
    return count >= LEAST_SHARE * CELL * CELL;
  }

  private static int fill(
      int start, int patch, int[] counts, int columns, int[] patchOf, int[] queue) {
    int rows = counts.length / columns;
    int end = 0;
    int held = 0;
    queue[end++] = start;
    patchOf[start] = patch;
    for (int k = 0; k < end; k++) {
      int x = queue[k] % columns;
      int y = queue[k] / columns;
      held += counts[queue[k]];
      for (int row = Math.max(0, y - 1); row <= Math.min(rows - 1, y + 1); row++) {
        for (int column = Math.max(0, x - 1); column <= Math.min(columns - 1, x + 1); column++) {
          int next = row * columns + column;
          if (patchOf[next] == 0 && isTooth(counts[next])) {
            patchOf[next] = patch;
            queue[end++] = next;
          }
        }
      }
    }
    return held;
  }

  private static void add(double[] sums, double weight, double x, double y) {
    sums[0] += weight;
    sums[1] += weight * x;
    sums[2] += weight * y;
    sums[3] += weight * x * x;
    sums[4] += weight * y * y;
    sums[5] += weight * x * y;
  }

  private static ToothRow of(double[] sums, int columns, int rows) {
    double x = sums[1] / sums[0];
    double y = sums[2] / sums[0];
    // A cell is no point: its own spread is 1/12 in each direction.
    double across = sums[3] / sums[0] - x * x + 1 / 12.0;
    double down = sums[4] / sums[0] - y * y + 1 / 12.0;
    double both = sums[5] / sums[0] - x * y;
    double spread = Math.hypot((across - down) / 2, both);
    double middle = (across + down) / 2;
    double angle = Math.toDegrees(Math.atan2(2 * both, across - down)) / 2;
    boolean lies = across >= down;
    double off = lies ? (x + 0.5) / columns : (y + 0.5) / rows;
    return new ToothRow(
        Math.abs(lies ? angle : 90 - Math.abs(angle)),
        Math.sqrt((middle + spread) / Math.max(1 / 12.0, middle - spread)),
        Math.abs(off - 0.5));
  }
}
