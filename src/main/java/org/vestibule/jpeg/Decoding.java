package org.vestibule.jpeg;

import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Decodes a picture for one use, in admitted memory: fast if it is sound, else the plain way, whose
 * word counts. That either finds the fault and its place, or reads the picture in spite of it.
 */
final class Decoding {

  /** What a decoded picture is used for. */
  interface Use<T> {
    T of(TokenPicture picture) throws JpegFault;
  }

  /** Decodes fast into a picture that is empty yet. */
  private interface Decoder {
    void decode(byte[] bytes, TokenPicture picture) throws JpegFault;
  }

  private Decoding() {}

  /**
   * Decodes the first picture of a file and uses it.
   *
   * @param transposed true if rows and columns are to change places
   */
  static <T> T use(byte[] bytes, boolean transposed, Use<T> use) throws JpegFault {
    return use(bytes, transposed, Decoding::decode, use);
  }

  /**
   * Decodes to write once what a plan takes: all is read, and must be sound, but only that is kept.
   * The picture may have no tokens.
   */
  static <T> T use(byte[] bytes, TranscodePlan plan, Use<T> use) throws JpegFault {
    boolean transposed = plan.turn().swapsAxes();
    return use(
        bytes,
        transposed,
        (source, picture) -> {
          if (picture.structure.progressive() && !transposed) {
            ProgressiveDecoder.decodeUntold(source, picture);
          } else {
            narrow(picture, plan);
            decode(source, picture);
          }
        },
        use);
  }

  private static void narrow(TokenPicture picture, TranscodePlan plan) {
    try {
      Layout.of(picture.structure.frame(), plan).narrow(picture);
    } catch (JpegFault fault) {
      // A plan that doesn't fit is refused by whoever uses the picture, if it is sound at all.
    }
  }

  private static <T> T use(byte[] bytes, boolean transposed, Decoder decoder, Use<T> use)
      throws JpegFault {
    JpegStructure structure = JpegStructure.readOrFail(bytes);
    PictureLimits.check(structure);
    Attempt<T> attempt =
        MemoryBudget.shared()
            .within(
                MemoryNeed.transcoding(structure),
                () -> fast(bytes, structure, transposed, decoder, use));
    JpegFault fault = attempt.fault();
    return fault == null
        ? Objects.requireNonNull(attempt.made(), "a use makes something")
        : plain(bytes, structure, transposed, use, fault);
  }

  /** What came of the fast way: something made, or the fault that stopped the decoding. */
  private record Attempt<T>(@Nullable T made, @Nullable JpegFault fault) {}

  private static <T> Attempt<T> fast(
      byte[] bytes, JpegStructure structure, boolean transposed, Decoder decoder, Use<T> use)
      throws JpegFault {
    TokenPicture picture;
    try {
      picture = new TokenPicture(structure, transposed);
      decoder.decode(bytes, picture);
    } catch (JpegFault fault) {
      return new Attempt<>(null, fault);
    }
    return new Attempt<>(use.of(picture), null);
  }

  /** Decodes fast into a picture that is empty yet; takes sound and tidy pictures only. */
  static void decode(byte[] bytes, TokenPicture picture) throws JpegFault {
    if (picture.structure.progressive()) {
      ProgressiveDecoder.decode(bytes, picture);
    } else {
      TokenDecoder.decode(bytes, picture);
    }
  }

  private static <T> T plain(
      byte[] bytes, JpegStructure structure, boolean transposed, Use<T> use, JpegFault fault)
      throws JpegFault {
    if (!structure.progressive()) {
      PictureDecoder.stream(bytes, structure, (component, row, blocks) -> {});
    }
    long need = MemoryNeed.transcoding(structure) + MemoryNeed.coefficients(structure.frame());
    MemoryBudget budget = MemoryBudget.shared();
    if (!budget.fits(need)) {
      throw fault;
    }
    return budget.within(
        need,
        () -> use.of(CoefficientTokens.of(PictureDecoder.decode(bytes, structure), transposed)));
  }
}
