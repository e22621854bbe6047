package org.vestibule.jpeg;

/** Reads a picture's facts from the tokens of its brightness. */
final class FactsReader {

  private FactsReader() {}

  static PictureFacts read(TokenPicture picture) {
    TokenPlane plane = picture.planes.get(0);
    FactsCounter counter = new FactsCounter(picture.structure.frame(), plane.component);
    TokenBlock block =
        new TokenBlock(picture.tokens, picture.shownQuantisation(0), FactsCounter.LAST_FINE);
    ReducedInverse inverse = new ReducedInverse(2, 2);
    byte[] patches = new byte[4];
    for (int row = 0, index = 0; row < plane.grid.high(); row++) {
      for (int column = 0; column < plane.grid.wide(); column++, index++) {
        block.read(plane, index);
        counter.detail(energy(block.values));
        inverse.block(block.values, patches, 0, 2);
        for (int i = 0; i < 4; i++) {
          int across = picture.transposed ? i >> 1 : i & 1;
          int down = picture.transposed ? i & 1 : i >> 1;
          counter.patch(2 * row + down, 2 * column + across, patches[i]);
        }
      }
    }
    return counter.facts();
  }

  private static long energy(int[] values) {
    long energy = 0;
    for (int at = FactsCounter.FIRST_FINE; at <= FactsCounter.LAST_FINE; at++) {
      energy += (long) values[at] * values[at];
    }
    return energy;
  }
}
