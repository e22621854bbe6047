package org.vestibule.jpeg;

/** One component's samples at a reduced size, and where each pixel of a preview finds its own. */
final class PreviewPlane {

  private final byte[] samples;
  private final int stride;
  private final int high;
  private int[] columns = new int[0];

  /** True if each pixel has a sample of its own. */
  private boolean straight;

  private int[] rows = new int[0];

  private PreviewPlane(int stride, byte[] samples) {
    this.stride = stride;
    this.high = samples.length / stride;
    this.samples = samples;
  }

  /** A sample for each block. */
  static PreviewPlane of(GrayRaster eighth) {
    return new PreviewPlane(eighth.width(), eighth.samples());
  }

  /** Samples that were made while a picture was read. */
  static PreviewPlane of(ReducedPlane reduced) {
    return new PreviewPlane(reduced.stride, reduced.samples);
  }

  /**
   * Makes the samples of tokens.
   *
   * @param across samples of a block as shown, 1 to 8
   * @param down samples of a block as shown, 1 to 8
   */
  static PreviewPlane of(TokenPicture picture, int component, int across, int down) {
    TokenPlane plane = picture.planes.get(component);
    boolean swaps = picture.transposed;
    int blocksWide = swaps ? plane.grid.high() : plane.grid.wide();
    int blocksHigh = swaps ? plane.grid.wide() : plane.grid.high();
    int stride = Math.multiplyExact(blocksWide, across);
    byte[] samples = new byte[Math.multiplyExact(stride, Math.multiplyExact(blocksHigh, down))];
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
    return new PreviewPlane(stride, samples);
  }

  /** Says which sample each pixel across takes: that at {@code dividend / divisor} of its place. */
  void pixelColumns(int pixels, int dividend, int divisor) {
    columns = places(pixels, stride, dividend, divisor);
    straight = pixels <= stride && dividend == divisor;
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
    if (straight) {
      System.arraycopy(samples, base, to, 0, to.length);
      return;
    }
    for (int x = 0; x < to.length; x++) {
      to[x] = samples[base + columns[x]];
    }
  }
}
