package org.vestibule.jpeg;

import java.util.Objects;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;

/**
 * All that a photograph is asked for when it comes in, from one reading of its codes: whether they
 * are sound, its brightness small enough to search for cards, a preview, and facts. It lies as the
 * file stores it, before any Exif rotation.
 *
 * <p>Of a large sequential picture nothing is kept but samples at 1/8 and 1/4 ({@link
 * ReducedPlane}); any other is decoded to tokens once.
 */
public final class FirstLook {

  /** The picture as it was decoded: one of the two. */
  private final @Nullable QuickLook quick;

  private final @Nullable TokenPicture tokens;
  private final int previewSide;
  private final int length;

  private FirstLook(
      byte[] bytes, @Nullable QuickLook quick, @Nullable TokenPicture tokens, int previewSide) {
    this.quick = quick;
    this.tokens = tokens;
    this.previewSide = previewSide;
    this.length = bytes.length;
  }

  /**
   * Looks at a file's first picture; one that is damaged or can't be decoded is refused.
   *
   * @param previewSide the preview's longer side has at most this many pixels, 1 to 4096
   * @param use takes what it needs; the look itself is over when it returns
   */
  public static <T> Outcome<T> use(byte[] bytes, int previewSide, Function<FirstLook, T> use) {
    return use(bytes, previewSide, false, use);
  }

  /**
   * The same, of a picture that will likely be turned.
   *
   * @param weighs true to find what its coefficients weigh, which spares its proof a decoding
   */
  public static <T> Outcome<T> use(
      byte[] bytes, int previewSide, boolean weighs, Function<FirstLook, T> use) {
    return use(bytes, null, previewSide, weighs, use);
  }

  /**
   * The same, of a file that was gone through before.
   *
   * @param known how these very bytes are built; null if nobody read that yet
   */
  public static <T> Outcome<T> use(
      byte[] bytes,
      @Nullable JpegStructure known,
      int previewSide,
      boolean weighs,
      Function<FirstLook, T> use) {
    Preview.requireSide(previewSide);
    try {
      JpegStructure structure = known == null ? JpegStructure.readOrFail(bytes) : known;
      PictureLimits.check(structure);
      if (QuickLook.suits(structure, previewSide)) {
        T made = quickly(bytes, structure, previewSide, weighs, use);
        if (made != null) {
          return Outcome.done(made);
        }
      }
      return Outcome.done(
          Decoding.use(
              bytes,
              false,
              picture -> use.apply(new FirstLook(bytes, null, picture, previewSide))));
    } catch (JpegFault fault) {
      return fault.refusal();
    }
  }

  /** Null for what is odd or damaged: that is read again the plain way, which finds the words. */
  private static <T> @Nullable T quickly(
      byte[] bytes,
      JpegStructure structure,
      int previewSide,
      boolean weighs,
      Function<FirstLook, T> use) {
    try {
      return MemoryBudget.shared()
          .within(
              QuickLook.bytes(structure.frame()),
              () ->
                  use.apply(
                      new FirstLook(
                          bytes, QuickLook.read(bytes, structure, weighs), null, previewSide)));
    } catch (JpegFault fault) {
      return null;
    }
  }

  /** How the file is built. */
  public JpegStructure structure() {
    return quick == null ? tokens().structure : quick.structure();
  }

  /** The brightness at 1/8: a sample for each block. */
  public GrayRaster eighth() {
    return quick == null ? new Brightness(tokens()).whole(1) : quick.eighth();
  }

  /**
   * A rectangle of blocks of the brightness at 1/4.
   *
   * @param left first block across
   * @param top first block down
   * @param right block after the last, across
   * @param bottom block after the last, down
   */
  public GrayRaster quarter(int left, int top, int right, int bottom) {
    return quick == null
        ? new Brightness(tokens()).part(2, left, top, right, bottom)
        : quick.quarter().part(2 * left, 2 * top, 2 * right, 2 * bottom);
  }

  /** The whole photograph small; null if its colours can't be shown. */
  public @Nullable Raster preview() {
    if (quick != null) {
      return quick.preview(previewSide);
    }
    TokenPicture picture = tokens();
    if (!Preview.canShow(picture.structure)) {
      return null;
    }
    try {
      return Preview.of(picture, previewSide, Turn.NONE);
    } catch (JpegFault fault) {
      throw new IllegalStateException("a picture that can be shown was not", fault);
    }
  }

  /** What the coefficients say. */
  public PictureFacts facts() {
    return quick == null ? FactsReader.read(tokens()) : quick.facts();
  }

  /**
   * Says of these bytes that every code was read and that the coded data can stay as it is; null if
   * that can't be said.
   */
  public @Nullable SoundScan sound() {
    PlainScan plain = quick == null ? tokens().plainScan : quick.plainScan();
    return plain == null ? null : new SoundScan(length, structure());
  }

  /** What its coefficients weigh; null if nobody asked for it, or it was read another way. */
  public @Nullable PictureWeight weight() {
    return quick == null ? null : quick.weight();
  }

  private TokenPicture tokens() {
    return Objects.requireNonNull(tokens, "a picture was decoded one way or the other");
  }
}
