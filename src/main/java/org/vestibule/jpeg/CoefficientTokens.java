package org.vestibule.jpeg;

/** Writes the coefficients of a decoded picture as tokens; its bytes are never kept as they are. */
final class CoefficientTokens {

  private final Tokens out;
  private final int[] places;
  private final ScatteredBlock block = new ScatteredBlock();

  private CoefficientTokens(Tokens out, boolean transposed) {
    this.out = out;
    this.places = ScatteredBlock.placesFor(transposed);
  }

  static TokenPicture of(Coefficients source, boolean transposed) throws JpegFault {
    TokenPicture picture = new TokenPicture(source.structure(), transposed);
    CoefficientTokens writer = new CoefficientTokens(picture.tokens, transposed);
    for (int i = 0; i < picture.planes.size(); i++) {
      writer.plane(source.components().get(i), picture.planes.get(i));
    }
    return picture;
  }

  private void plane(ComponentBlocks blocks, TokenPlane plane) throws JpegFault {
    plane.quantisation = blocks.quantisation;
    int index = 0;
    for (int row = 0; row < blocks.grid.high(); row++) {
      for (int column = 0; column < blocks.grid.wide(); column++) {
        int base = blocks.base(row, column);
        plane.dc[index] = blocks.values[base];
        plane.place[index++] = out.begin();
        block(blocks.values, base, plane.acCounts);
      }
    }
  }

  private void block(short[] values, int base, int[] counts) throws JpegFault {
    for (int position = 1; position < 64; position++) {
      int value = values[base + position];
      if (value != 0) {
        if (value == Short.MIN_VALUE) {
          throw JpegFault.damaged("the picture's data is damaged (a value out of range)");
        }
        block.put(places[position], value);
      }
    }
    block.write(out, counts);
  }
}
