package org.vestibule.jpeg;

import java.util.function.Function;
import org.vestibule.base.Outcome;

/**
 * A picture's brightness (its first component) at any of four sizes, whole or in part, from
 * coefficients that are decoded once. It lies as the file stores it, before any Exif rotation.
 *
 * <p>A scale is given in eighths: 1, 2, 4 or 8 samples for each of a block's edges. At 1 no inverse
 * transform is needed at all.
 */
public final class Brightness {

  private final TokenPicture picture;
  private final BlockGrid grid;

  Brightness(TokenPicture picture) {
    this.picture = picture;
    this.grid = picture.planes.get(0).grid;
  }

  /** Decodes a file's first picture once and uses its brightness. */
  public static <T> Outcome<T> use(byte[] bytes, Function<Brightness, T> use) {
    try {
      return Outcome.done(
          Decoding.use(bytes, false, picture -> use.apply(new Brightness(picture))));
    } catch (JpegFault fault) {
      return fault.refusal();
    }
  }

  /** Blocks of 8 x 8 samples, across. */
  public int blocksWide() {
    return grid.wide();
  }

  /** Blocks of 8 x 8 samples, down. */
  public int blocksHigh() {
    return grid.high();
  }

  /**
   * The whole picture at a scale. Its edges are those of its blocks, so that up to 7 samples beyond
   * the picture may be in it.
   *
   * @param eighths 1, 2, 4 or 8
   */
  public GrayRaster whole(int eighths) {
    return part(eighths, 0, 0, grid.wide(), grid.high());
  }

  /**
   * A rectangle of blocks at a scale.
   *
   * @param eighths 1, 2, 4 or 8
   * @param left first block across
   * @param top first block down
   * @param right block after the last, across
   * @param bottom block after the last, down
   */
  public GrayRaster part(int eighths, int left, int top, int right, int bottom) {
    if (eighths != 1 && eighths != 2 && eighths != 4 && eighths != 8) {
      throw new IllegalArgumentException("eighths must be 1, 2, 4 or 8 but was " + eighths);
    }
    if (left < 0 || top < 0 || right > grid.wide() || bottom > grid.high()) {
      throw new IllegalArgumentException("the part must lie within the picture's blocks");
    }
    int width = Math.multiplyExact(right - left, eighths);
    int height = Math.multiplyExact(bottom - top, eighths);
    byte[] samples = new byte[Math.multiplyExact(width, height)];
    ReducedInverse inverse = new ReducedInverse(eighths, eighths);
    TokenBlock block =
        new TokenBlock(picture.tokens, picture.shownQuantisation(0), inverse.lastPosition());
    byte[] one = new byte[eighths * eighths];
    TokenPlane plane = picture.planes.get(0);
    for (int row = top; row < bottom; row++) {
      for (int column = left; column < right; column++) {
        block.read(plane, row * grid.wide() + column);
        inverse.block(block.values, one, 0, eighths);
        place(one, eighths, samples, ((row - top) * width + column - left) * eighths, width);
      }
    }
    return GrayRaster.owning(width, height, samples);
  }

  private void place(byte[] one, int side, byte[] samples, int at, int stride) {
    for (int y = 0; y < side; y++) {
      for (int x = 0; x < side; x++) {
        samples[at + y * stride + x] = one[picture.transposed ? x * side + y : y * side + x];
      }
    }
  }
}
