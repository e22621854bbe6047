package org.vestibule.card;

import java.util.ArrayList;
import java.util.List;

/**
 * Finds the corner marks of QR codes in a small picture: on every line through the middle of such a
 * mark, dark, light, dark, light and dark follow each other as 1 : 1 : 3 : 1 : 1 (ISO/IEC 18004,
 * finder pattern; from memory). Edges are placed between samples, so that modules of little more
 * than one sample are found.
 */
final class FinderScan {

  private static final float[] SHARES = {1, 1, 3, 1, 1};
  private static final float MODULES = 7;

  /** What a run may be off, in modules. */
  private static final float OFF = 0.55f;

  private static final float OFF_MIDDLE = 1.2f;

  /** Smallest module, in samples. */
  private static final float SMALLEST = 0.85f;

  /** Dark and light must be at least this far apart. */
  private static final int LEAST_CONTRAST = 6;

  private static final int MOST = 60;

  /** Takes an index into a ring of eight. */
  private static final int RING = 7;

  private final Shades shades;
  private final List<Finder> found = new ArrayList<>();
  private final float[] edges = new float[RING + 1];

  private FinderScan(Shades shades) {
    this.shades = shades;
  }

  /** All marks that hold in four directions. */
  static List<Finder> in(Shades shades) {
    FinderScan scan = new FinderScan(shades);
    for (int y = 0; y < shades.height && scan.found.size() < MOST; y++) {
      scan.row(y);
    }
    return scan.found;
  }

  /** Follows a row's edges; five runs that fit are looked at from all sides. */
  private void row(int y) {
    short[] above = shades.above;
    int base = y * shades.width;
    // The last edges are kept in a ring.
    float[] edges = this.edges;
    int seen = 0;
    for (int from = 1; from < shades.width; from += Long.SIZE) {
      long changes = changes(above, base + from, Math.min(Long.SIZE, shades.width - from));
      while (changes != 0) {
        int x = from + Long.numberOfTrailingZeros(changes);
        changes &= changes - 1;
        int before = above[base + x - 1];
        int now = above[base + x];
        edges[seen & RING] = x - 1 + before / (float) (before - now);
        seen++;
        if (now >= 0 && seen >= 6) {
          edge(y, seen);
        }
      }
    }
  }

  /** A bit for each of so many samples that is dark where the one before it is light, or so. */
  private static long changes(short[] above, int from, int count) {
    long changes = 0;
    int before = above[from - 1];
    for (int i = 0; i < count; i++) {
      int now = above[from + i];
      changes |= (long) ((before ^ now) >>> 31) << i;
      before = now;
    }
    return changes;
  }

  /** Takes the last six edges of a row. */
  private void edge(int y, int seen) {
    float first = edges[(seen - 6) & RING];
    float third = edges[(seen - 4) & RING];
    float fourth = edges[(seen - 3) & RING];
    float last = edges[(seen - 1) & RING];
    float module = (last - first) / MODULES;
    // The middle alone tells most of them apart.
    if (module >= SMALLEST
        && Math.abs(fourth - third - SHARES[2] * module) <= OFF_MIDDLE * module
        && fits(
            new float[] {
              first, edges[(seen - 5) & RING], third, fourth, edges[(seen - 2) & RING], last
            })) {
      look((third + fourth) / 2, y, module);
    }
  }

  private static boolean fits(float[] edges) {
    float module = (edges[5] - edges[0]) / MODULES;
    if (module < SMALLEST) {
      return false;
    }
    for (int i = 0; i < SHARES.length; i++) {
      float off = Math.abs(edges[i + 1] - edges[i] - SHARES[i] * module);
      if (off > (i == 2 ? OFF_MIDDLE : OFF) * module) {
        return false;
      }
    }
    return true;
  }

  private void look(float x, float y, float module) {
    for (Finder other : found) {
      if (Math.hypot(other.x() - x, other.y() - y) < 3 * Math.max(module, other.module())) {
        return;
      }
    }
    float[] down = line(x, y, 0, 1, module);
    if (down.length == 0) {
      return;
    }
    float middle = y + (down[2] + down[3]) / 2;
    float[] across = line(x, middle, 1, 0, module);
    if (across.length == 0) {
      return;
    }
    float centre = x + (across[2] + across[3]) / 2;
    float size = ((across[5] - across[0]) + (down[5] - down[0])) / 2 / MODULES;
    float slant = (float) Math.sqrt(0.5);
    if (line(centre, middle, slant, slant, size).length > 0
        && line(centre, middle, slant, -slant, size).length > 0
        && contrast(centre, middle, size) >= LEAST_CONTRAST) {
      found.add(new Finder(centre, middle, size));
    }
  }

  /** The six edges on a line through a place, from it in samples; none if they don't fit. */
  private float[] line(float x, float y, float across, float down, float module) {
    float[] forward = half(x, y, across, down, module);
    float[] back = half(x, y, -across, -down, module);
    if (forward.length == 0 || back.length == 0) {
      return new float[0];
    }
    float[] edges = {-back[2], -back[1], -back[0], forward[0], forward[1], forward[2]};
    float size = (edges[5] - edges[0]) / MODULES;
    return size < 2.2f * module && module < 2.2f * size && fits(edges) ? edges : new float[0];
  }

  /** Three edges outwards: dark to light, light to dark, dark to light. */
  private float[] half(float x, float y, float across, float down, float module) {
    float[] edges = new float[3];
    int count = 0;
    float step = 0.5f;
    float limit = 9 * module;
    float before = shades.above(x, y);
    if (!(before < 0)) {
      return new float[0];
    }
    for (float way = step; way < limit; way += step) {
      float now = shades.above(x + way * across, y + way * down);
      if (Float.isNaN(now)) {
        return new float[0];
      }
      if (now < 0 != before < 0) {
        edges[count++] = way - step + step * before / (before - now);
        if (count == 3) {
          return edges;
        }
      }
      before = now;
    }
    return new float[0];
  }

  /** The light ring against the dark middle. */
  private int contrast(float x, float y, float module) {
    int middle = shades.sample(Math.round(x), Math.round(y));
    int ring = 0;
    for (int i = 0; i < 8; i++) {
      double angle = i * Math.PI / 4;
      double away = 2.1 * module;
      int at =
          shades.sample(
              (int) Math.round(x + away * Math.cos(angle)),
              (int) Math.round(y + away * Math.sin(angle)));
      ring = Math.max(ring, at);
    }
    return ring - middle;
  }
}
