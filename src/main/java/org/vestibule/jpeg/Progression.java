package org.vestibule.jpeg;

import java.util.Arrays;

/**
 * Keeps count of which bits of which coefficients progressive scans have delivered (T.81 G.1.1).
 */
final class Progression {

  private static final int NONE = -1;
  private static final int HIGHEST_BIT = 13;

  /** The lowest bit delivered of each component's coefficients, or NONE. */
  private final int[][] lowest;

  Progression(int components) {
    lowest = new int[components][64];
    for (int[] component : lowest) {
      Arrays.fill(component, NONE);
    }
  }

  /** Takes note of a scan, which must go on where the ones before it ended. */
  void scan(ScanHeader header, JpegSegment segment) throws JpegFault {
    boolean dc = header.spectralStart() == 0;
    boolean band =
        dc
            ? header.spectralEnd() == 0
            : header.spectralStart() <= header.spectralEnd()
                && header.spectralEnd() < 64
                && !header.interleaved();
    boolean bits =
        header.low() <= HIGHEST_BIT && (header.high() == 0 || header.high() == header.low() + 1);
    if (!band || !bits) {
      throw outOfOrder(header, segment);
    }
    for (ScanHeader.Part part : header.components()) {
      int[] component = lowest[part.index()];
      if (!dc && component[0] == NONE) {
        throw outOfOrder(header, segment);
      }
      for (int i = header.spectralStart(); i <= header.spectralEnd(); i++) {
        if (component[i] != (header.high() == 0 ? NONE : header.high())) {
          throw outOfOrder(header, segment);
        }
        component[i] = header.low();
      }
    }
  }

  /** True if every component has its DC coefficients, at least roughly. */
  boolean shown() {
    return Arrays.stream(lowest).noneMatch(component -> component[0] == NONE);
  }

  /** True if every bit of every coefficient was delivered. */
  boolean complete() {
    return Arrays.stream(lowest)
        .allMatch(component -> Arrays.stream(component).allMatch(bit -> bit == 0));
  }

  private static JpegFault outOfOrder(ScanHeader header, JpegSegment segment) {
    return JpegFault.damaged(
        segment.place()
            + " carries coefficients "
            + header.spectralStart()
            + " to "
            + header.spectralEnd()
            + ", bits "
            + header.high()
            + " to "
            + header.low()
            + ", which does not go on from the scans before it");
  }
}
