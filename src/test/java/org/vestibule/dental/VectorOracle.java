package org.vestibule.dental;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.vestibule.base.Turn;

/**
 * The geometry of mirror and camera, worked out apart from the code it checks: directions are
 * integer vectors on the right-handed axes left, posterior, head. With image-right r and image-down
 * d, r x d is the way a camera looks that sees the picture true-handed; one mirror reverses it.
 * Pictures are moved as small rasters, sample by sample.
 */
public final class VectorOracle {

  private static final Map<Character, int[]> VECTORS =
      Map.of(
          'L',
          new int[] {1, 0, 0},
          'R',
          new int[] {-1, 0, 0},
          'P',
          new int[] {0, 1, 0},
          'A',
          new int[] {0, -1, 0},
          'H',
          new int[] {0, 0, 1},
          'F',
          new int[] {0, 0, -1});

  /** A raw picture: what lies towards its right and its bottom margin. */
  public record Raw(char right, char down) {

    /** The letter at an edge named as Edge and Incisors name it. */
    public char at(String edge) {
      return switch (edge) {
        case "RIGHT" -> right;
        case "LEFT" -> opposite(right);
        case "BOTTOM" -> down;
        default -> opposite(down);
      };
    }
  }

  private VectorOracle() {}

  public static char opposite(char letter) {
    int[] v = VECTORS.get(letter);
    return letterOf(-v[0], -v[1], -v[2]);
  }

  public static char cross(char right, char down) {
    int[] r = VECTORS.get(right);
    int[] d = VECTORS.get(down);
    return letterOf(
        r[1] * d[2] - r[2] * d[1], r[2] * d[0] - r[0] * d[2], r[0] * d[1] - r[1] * d[0]);
  }

  private static char letterOf(int l, int p, int h) {
    for (Map.Entry<Character, int[]> entry : VECTORS.entrySet()) {
      int[] v = entry.getValue();
      if (v[0] == l && v[1] == p && v[2] == h) {
        return entry.getKey();
      }
    }
    throw new IllegalArgumentException("not a unit vector");
  }

  /** The four raw pictures, one for each way to hold the phone, of a direct or mirrored capture. */
  public static List<Raw> rawPictures(char looking, boolean mirrored) {
    List<Raw> all = new ArrayList<>();
    for (char right : "LRAPHF".toCharArray()) {
      for (char down : "LRAPHF".toCharArray()) {
        if (right == down || right == opposite(down)) {
          continue;
        }
        if (cross(right, down) == (mirrored ? opposite(looking) : looking)) {
          all.add(new Raw(right, down));
        }
      }
    }
    return all;
  }

  /**
   * What a viewer has towards right and bottom after a turn. The raster's corner samples carry the
   * directions of their two edges; it is moved as Exif's turns are usually drawn.
   */
  public static Raw turned(Raw raw, Turn turn) {
    String left = "" + opposite(raw.right);
    String top = "" + opposite(raw.down);
    String[][] raster = {
      {top + left, top, top + raw.right},
      {raw.down + left, "" + raw.down, "" + raw.down + raw.right}
    };
    String[][] seen = move(raster, turn);
    String topEdge = common(seen[0]);
    String bottomEdge = common(seen[seen.length - 1]);
    String rightEdge = common(column(seen, seen[0].length - 1));
    if (opposite(topEdge.charAt(0)) != bottomEdge.charAt(0)) {
      throw new IllegalStateException("edges don't face each other");
    }
    return new Raw(rightEdge.charAt(0), bottomEdge.charAt(0));
  }

  private static String[][] move(String[][] in, Turn turn) {
    int rows = in.length;
    int columns = in[0].length;
    boolean swap =
        switch (turn) {
          case TRANSPOSE, TRANSVERSE, ROTATE_90, ROTATE_270 -> true;
          default -> false;
        };
    String[][] out = new String[swap ? columns : rows][swap ? rows : columns];
    for (int y = 0; y < rows; y++) {
      for (int x = 0; x < columns; x++) {
        int flippedX = columns - 1 - x;
        int flippedY = rows - 1 - y;
        switch (turn) {
          case NONE -> out[y][x] = in[y][x];
          case FLIP_HORIZONTAL -> out[y][flippedX] = in[y][x];
          case FLIP_VERTICAL -> out[flippedY][x] = in[y][x];
          case ROTATE_180 -> out[flippedY][flippedX] = in[y][x];
          case TRANSPOSE -> out[x][y] = in[y][x];
          case TRANSVERSE -> out[flippedX][flippedY] = in[y][x];
          case ROTATE_90 -> out[x][flippedY] = in[y][x];
          case ROTATE_270 -> out[flippedX][y] = in[y][x];
        }
      }
    }
    return out;
  }

  private static String[] column(String[][] raster, int x) {
    String[] column = new String[raster.length];
    for (int y = 0; y < raster.length; y++) {
      column[y] = raster[y][x];
    }
    return column;
  }

  private static String common(String[] samples) {
    for (char letter : samples[0].toCharArray()) {
      boolean everywhere = true;
      for (String sample : samples) {
        everywhere &= sample.indexOf(letter) >= 0;
      }
      if (everywhere) {
        return "" + letter;
      }
    }
    throw new IllegalStateException("an edge without a direction");
  }
}
