package org.vestibule.jpeg;

import java.util.List;

/**
 * What the coefficients say about how a picture was taken. All of it is the same however the
 * picture is turned.
 *
 * @param lumaHistogram for each brightness 0 to 255, how many patches of 4 x 4 samples have that
 *     mean; a component that is sampled more coarsely has as many fewer patches
 * @param darkShare share of the patches that are clipped to black (mean of 2 or less), 0 to 1
 * @param brightShare share of the patches that are clipped to white (mean of 253 or more), 0 to 1
 * @param focus how much fine detail the most detailed blocks hold: the 90th percentile, over all
 *     brightness blocks, of the root mean square of frequencies with row and column summing to 3 to
 *     6, in steps of brightness; below about 1 nothing is sharp. A measure to compare photographs
 *     of one kind by (chosen, no source)
 */
public record PictureFacts(
    List<Integer> lumaHistogram, double darkShare, double brightShare, double focus) {

  public PictureFacts {
    lumaHistogram = List.copyOf(lumaHistogram);
    if (lumaHistogram.size() != 256) {
      throw new IllegalArgumentException(
          "a histogram has 256 counts but " + lumaHistogram.size() + " were given");
    }
  }
}
