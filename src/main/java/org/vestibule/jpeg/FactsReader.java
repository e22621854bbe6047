package org.vestibule.jpeg;

import java.util.Arrays;

/** Reads a picture's facts from the tokens of its brightness. */
final class FactsReader {

  private static final int DARK = 2;
  private static final int BRIGHT = 253;

  /** Frequencies that sum to 3 to 6 stand at these zigzag positions (T.81 Figure A.6). */
  private static final int FIRST_FINE = 6;

  private static final int LAST_FINE = 27;
  private static final double SHARP_SHARE = 0.9;

  /** Steps of the focus measure for one step of brightness, and its largest value. */
  private static final int FOCUS_STEPS = 16;

  private static final int LARGEST_FOCUS = 256;

  private final TokenPicture picture;
  private final int[] histogram = new int[256];
  private final int[] detail = new int[FOCUS_STEPS * LARGEST_FOCUS + 1];

  private FactsReader(TokenPicture picture) {
    this.picture = picture;
  }

  static PictureFacts read(TokenPicture picture) {
    FactsReader reader = new FactsReader(picture);
    reader.blocks();
    return reader.facts();
  }

  private void blocks() {
    TokenPlane plane = picture.planes.get(0);
    int[] quantisation = picture.shownQuantisation(0);
    TokenBlock block = new TokenBlock(picture.tokens, quantisation, LAST_FINE);
    ReducedInverse inverse = new ReducedInverse(2, 2);
    byte[] patches = new byte[4];
    int patchesWide = (samples(plane, false) + 3) / 4;
    int patchesHigh = (samples(plane, true) + 3) / 4;
    for (int row = 0, index = 0; row < plane.grid.high(); row++) {
      for (int column = 0; column < plane.grid.wide(); column++, index++) {
        block.read(plane, index);
        detail[detail(block.values)]++;
        inverse.block(block.values, patches, 0, 2);
        for (int i = 0; i < 4; i++) {
          int across = picture.transposed ? i >> 1 : i & 1;
          int down = picture.transposed ? i & 1 : i >> 1;
          if (2 * column + across < patchesWide && 2 * row + down < patchesHigh) {
            histogram[patches[i] & 0xFF]++;
          }
        }
      }
    }
  }

  /** Samples of the brightness component along an axis of the stored picture (T.81 A.1.1). */
  private int samples(TokenPlane plane, boolean vertical) {
    JpegFrame frame = picture.structure.frame();
    int length = vertical ? frame.size().height() : frame.size().width();
    if (frame.components().size() == 1) {
      return length;
    }
    int factor = vertical ? plane.component.vertical() : plane.component.horizontal();
    int most = vertical ? frame.maxVertical() : frame.maxHorizontal();
    return (length * factor + most - 1) / most;
  }

  /** The transform keeps energy, so 64 samples' squares sum to the coefficients' (T.81 A.3.3). */
  private static int detail(int[] values) {
    long energy = 0;
    for (int position = FIRST_FINE; position <= LAST_FINE; position++) {
      energy += (long) values[position] * values[position];
    }
    return (int)
        Math.min(
            (long) FOCUS_STEPS * LARGEST_FOCUS, (long) (Math.sqrt(energy / 64.0) * FOCUS_STEPS));
  }

  private PictureFacts facts() {
    long patches = Arrays.stream(histogram).asLongStream().sum();
    long dark = Arrays.stream(histogram, 0, DARK + 1).asLongStream().sum();
    long bright = Arrays.stream(histogram, BRIGHT, 256).asLongStream().sum();
    return new PictureFacts(
        Arrays.stream(histogram).boxed().toList(),
        (double) dark / patches,
        (double) bright / patches,
        focus());
  }

  private double focus() {
    long blocks = Arrays.stream(detail).asLongStream().sum();
    long below = 0;
    int step = 0;
    while (below + detail[step] <= SHARP_SHARE * blocks) {
      below += detail[step++];
    }
    return (double) step / FOCUS_STEPS;
  }
}
