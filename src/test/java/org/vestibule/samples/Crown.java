package org.vestibule.samples;

/**
 * Sizes of one tooth's crown in millimetres: along the arch, from cheek to tongue, and from gum to
 * edge. Rounded handbook sizes, from memory: they only have to look right.
 */
record Crown(double width, double depth, double length) {

  private static final double[][] UPPER = {
    {8.6, 7.0, 10.6},
    {6.7, 6.0, 9.2},
    {7.8, 8.0, 10.2},
    {7.1, 9.2, 8.6},
    {6.8, 9.2, 8.0},
    {10.4, 11.2, 7.6},
    {9.8, 11.0, 7.2}
  };
  private static final double[][] LOWER = {
    {5.4, 6.0, 8.8},
    {5.9, 6.2, 9.2},
    {6.9, 7.6, 10.4},
    {7.0, 7.9, 8.8},
    {7.2, 8.4, 8.2},
    {11.2, 10.4, 7.6},
    {10.6, 10.2, 7.2}
  };
  private static final double[][] UPPER_MILK = {
    {6.5, 5.0, 6.2}, {5.2, 4.6, 5.8}, {6.8, 6.4, 6.6}, {7.2, 8.6, 5.4}, {8.8, 10.0, 5.8}
  };
  private static final double[][] LOWER_MILK = {
    {4.2, 4.0, 5.4}, {4.7, 4.3, 5.6}, {5.9, 5.4, 6.4}, {7.8, 7.2, 5.6}, {9.8, 8.8, 5.6}
  };

  /** The crown of a tooth by its ISO 3950 number. */
  static Crown of(int tooth) {
    int quadrant = tooth / 10;
    double[][] table =
        switch (quadrant) {
          case 1, 2 -> UPPER;
          case 3, 4 -> LOWER;
          case 5, 6 -> UPPER_MILK;
          default -> LOWER_MILK;
        };
    double[] sizes = table[tooth % 10 - 1];
    return new Crown(sizes[0], sizes[1], sizes[2]);
  }
}
