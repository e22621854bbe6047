package org.vestibule.samples;

/** Smooth seeded noise for gum, enamel and glass. */
final class Noise {

  private final int seed;

  Noise(int seed) {
    this.seed = seed;
  }

  /** A value from -1 to 1 that changes smoothly over one unit. */
  double at(double x, double y) {
    int column = (int) Math.floor(x);
    int row = (int) Math.floor(y);
    double right = ease(x - column);
    double down = ease(y - row);
    double top = mix(lattice(column, row), lattice(column + 1, row), right);
    double bottom = mix(lattice(column, row + 1), lattice(column + 1, row + 1), right);
    return mix(top, bottom, down);
  }

  /** Three octaves of it. */
  double rough(double x, double y) {
    return (at(x, y) + at(2 * x + 17, 2 * y) / 2 + at(4 * x, 4 * y + 31) / 4) / 1.75;
  }

  private double lattice(int column, int row) {
    int hash = column * 0x27d4eb2d ^ row * 0x165667b1 ^ seed * 0x9e3779b1;
    hash = (hash ^ (hash >>> 15)) * 0x85ebca6b;
    hash = (hash ^ (hash >>> 13)) * 0xc2b2ae35;
    return ((hash ^ (hash >>> 16)) & 0xffff) / 32767.5 - 1;
  }

  private static double ease(double part) {
    return part * part * (3 - 2 * part);
  }

  static double mix(double from, double to, double part) {
    return from + (to - from) * part;
  }

  /** 0 below the first, 1 above the second, smooth between. */
  static double step(double low, double high, double value) {
    return ease(Math.max(0, Math.min(1, (value - low) / (high - low))));
  }

  /** A bell of this width around zero. */
  static double bell(double distance, double width) {
    double part = distance / width;
    if (part > 4 || part < -4) {
      return 0;
    }
    return Math.exp(-part * part);
  }
}
