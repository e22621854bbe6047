package org.vestibule.quality;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import org.vestibule.jpeg.Raster;

/**
 * The burnt-out patches of a preview, told apart: on teeth, or reflections on whatever else.
 *
 * <p>Tooth-coloured is a bright pixel of little colour, burnt-out white included ({@link
 * ToothColour}). Burnt out is one of them with a channel of 250 or more. A patch of burnt-out
 * pixels that touch each other counts as
 *
 * <ul>
 *   <li>a tooth's if it is larger than a specular spot and most of what surrounds it is
 *       tooth-coloured, or if it is as large as a tooth and doesn't touch the edge of the picture,
 *   <li>nothing if it touches the edge of the picture without lying on teeth: that is background,
 *   <li>a reflection otherwise.
 * </ul>
 */
final class BrightSpots {

  private static final int BURNT_OUT = 250;

  /**
   * A specular spot is at most this part of the picture, about 8 x 8 pixels of a preview of 440
   * (proposal, no source).
   */
  private static final double SPOT_SHARE = 0.0005;

  /**
   * From this part of the picture on, about 24 x 24 pixels of a preview of 440, a patch is taken
   * for a tooth that is burnt out from edge to edge (proposal, no source).
   */
  private static final double WHOLE_TOOTH_SHARE = 0.004;

  /** How far around a patch is looked, in pixels: past the halo, which has no colour either. */
  private static final int NEAR = 2;

  private static final int FAR = 4;

  private final int width;
  private final int height;
  private final boolean[] tooth;
  private final boolean[] burnt;
  private final int[] queue;
  private final boolean[] visited;
  private final int[] ringOf;
  private int toothPixels;
  private int burntOnTeeth;
  private int reflected;

  private BrightSpots(Raster preview) {
    this.width = preview.width();
    this.height = preview.height();
    int[] rgb = preview.rgb();
    this.tooth = new boolean[rgb.length];
    this.burnt = new boolean[rgb.length];
    this.queue = new int[rgb.length];
    this.visited = new boolean[rgb.length];
    this.ringOf = new int[rgb.length];
    for (int i = 0; i < rgb.length; i++) {
      tooth[i] = ToothColour.is(rgb[i]);
      burnt[i] = tooth[i] && brightest(rgb[i]) >= BURNT_OUT;
      toothPixels += tooth[i] ? 1 : 0;
    }
  }

  static BrightSpots in(Raster preview) {
    BrightSpots spots = new BrightSpots(preview);
    int patches = 0;
    for (int i = 0; i < spots.burnt.length; i++) {
      if (spots.burnt[i] && !spots.visited[i]) {
        spots.patch(i, ++patches);
      }
    }
    return spots;
  }

  /** Share of the picture that is tooth-coloured, 0 to 1. */
  double toothShare() {
    return (double) toothPixels / tooth.length;
  }

  /** Share of the tooth-coloured pixels that are burnt out, small spots left out, 0 to 1. */
  double burntOutShare() {
    return toothPixels == 0 ? 0 : (double) burntOnTeeth / toothPixels;
  }

  /** The largest row of what is tooth-coloured; null if nothing is. */
  @Nullable ToothRow row() {
    return ToothRow.in(tooth, width, height);
  }

  /** Share of the picture that reflections cover, 0 to 1. */
  double reflectedShare() {
    return (double) reflected / tooth.length;
  }

  private static int brightest(int rgb) {
    return Math.max(rgb >> 16 & 0xFF, Math.max(rgb >> 8 & 0xFF, rgb & 0xFF));
  }

  private void patch(int start, int number) {
    int size = grow(start);
    boolean onTeeth = surroundedByTeeth(size, number);
    boolean atEdge = Arrays.stream(queue, 0, size).anyMatch(this::isAtEdge);
    boolean wholeTooth = !atEdge && size > WHOLE_TOOTH_SHARE * tooth.length;
    if (wholeTooth || (onTeeth && size > SPOT_SHARE * tooth.length)) {
      burntOnTeeth += size;
    } else if (onTeeth || !atEdge) {
      reflected += size;
    }
  }

  /** Collects the patch in the queue. */
  private int grow(int start) {
    int end = 0;
    queue[end++] = start;
    visited[start] = true;
    for (int next = 0; next < end; next++) {
      int x = queue[next] % width;
      int y = queue[next] / width;
      for (int row = Math.max(0, y - 1); row <= Math.min(height - 1, y + 1); row++) {
        for (int column = Math.max(0, x - 1); column <= Math.min(width - 1, x + 1); column++) {
          int i = row * width + column;
          if (burnt[i] && !visited[i]) {
            visited[i] = true;
            queue[end++] = i;
          }
        }
      }
    }
    return end;
  }

  private boolean isAtEdge(int i) {
    int x = i % width;
    int y = i / width;
    return x == 0 || y == 0 || x == width - 1 || y == height - 1;
  }

  /** Looks at the eight directions from each pixel; each place around a patch counts once. */
  private boolean surroundedByTeeth(int size, int number) {
    int seen = 0;
    int teeth = 0;
    for (int k = 0; k < size; k++) {
      int x = queue[k] % width;
      int y = queue[k] / width;
      for (int distance = NEAR; distance <= FAR; distance++) {
        for (int direction = 0; direction < 9; direction++) {
          int column = x + (direction % 3 - 1) * distance;
          int row = y + (direction / 3 - 1) * distance;
          if (column >= 0 && row >= 0 && column < width && row < height) {
            int i = row * width + column;
            if (!burnt[i] && ringOf[i] != number) {
              ringOf[i] = number;
              seen++;
              teeth += tooth[i] ? 1 : 0;
            }
          }
        }
      }
    }
    return 2 * teeth > seen;
  }
}
