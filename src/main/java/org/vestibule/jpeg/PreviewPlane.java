package org.vestibule.jpeg;

/** One component's samples at a reduced size, and where each pixel of a preview finds its own. */
final class PreviewPlane {

  private final byte[] samples;
  private final int stride;
  private final int high;
  private int[] columns = new int[0];
  private int[] rows = new int[0];

  /**
   * Makes the samples.
   *
   * @param across samples of a block as shown, 1 to 8
   * @param down samples of a block as shown, 1 to 8
   */
  PreviewPlane(TokenPicture picture, int component, int across, int down) {
    TokenPlane plane = picture.planes.get(component);
    boolean swaps = picture.transposed;
    int blocksWide = swaps ? plane.grid.high() : plane.grid.wide();
    int blocksHigh = swaps ? plane.grid.wide() : plane.grid.high();
    this.stride = Math.multiplyExact(blocksWide, across);
    this.high = Math.multiplyExact(blocksHigh, down);
    this.samples = new byte[Math.multiplyExact(stride, high)];
    ReducedInverse inverse = new ReducedInverse(across, down);
    TokenBlock block =
        new TokenBlock(
            picture.tokens, picture.shownQuantisation(component), inverse.lastPosition());
    for (int row = 0; row < blocksHigh; row++) {
      for (int column = 0; column < blocksWide; column++) {
        block.read(
            plane, swaps ? column * plane.grid.wide() + row : row * plane.grid.wide() + column);
        inverse.block(block.values, samples, row * down * stride + column * across, stride);
      }
    }
  }

  /** Says which sample each pixel across takes: that at {@code dividend / divisor} of its place. */
  void pixelColumns(int pixels, int dividend, int divisor) {
    columns = places(pixels, stride, dividend, divisor);
  }

  /** Says which sample each pixel down takes. */
  void pixelRows(int pixels, int dividend, int divisor) {
    rows = places(pixels, high, dividend, divisor);
  }

  private static int[] places(int pixels, int samples, int dividend, int divisor) {
    int[] places = new int[pixels];
    for (int i = 0; i < pixels; i++) {
      places[i] = (int) Math.min(samples - 1L, (long) i * dividend / divisor);
    }
    return places;
  }

  /** The samples of a row of pixels. */
  void row(int y, byte[] to) {
    int base = rows[y] * stride;
    for (int x = 0; x < to.length; x++) {
      to[x] = samples[base + columns[x]];
    }
  }
}
