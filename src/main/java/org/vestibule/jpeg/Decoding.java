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

  private Decoding() {}

  /**
   * Decodes the first picture of a file and uses it.
   *
   * @param transposed true if rows and columns are to change places
   */
  static <T> T use(byte[] bytes, boolean transposed, Use<T> use) throws JpegFault {
    JpegStructure structure = JpegStructure.readOrFail(bytes);
    PictureLimits.check(structure);
    Attempt<T> attempt =
        MemoryBudget.shared()
            .within(
                MemoryNeed.transcoding(structure), () -> fast(bytes, structure, transposed, use));
    JpegFault fault = attempt.fault();
    return fault == null
        ? Objects.requireNonNull(attempt.made(), "a use makes something")
        : plain(bytes, structure, transposed, use, fault);
  }

  /** What came of the fast way: something made, or the fault that stopped the decoding. */
  private record Attempt<T>(@Nullable T made, @Nullable JpegFault fault) {}

  private static <T> Attempt<T> fast(
      byte[] bytes, JpegStructure structure, boolean transposed, Use<T> use) throws JpegFault {
    TokenPicture picture;
    try {
      picture = fast(bytes, structure, transposed);
    } catch (JpegFault fault) {
      return new Attempt<>(null, fault);
    }
    return new Attempt<>(use.of(picture), null);
  }

  private static TokenPicture fast(byte[] bytes, JpegStructure structure, boolean transposed)
      throws JpegFault {
    return structure.progressive()
        ? ProgressiveDecoder.decode(bytes, structure, transposed)
        : TokenDecoder.decode(bytes, structure, transposed);
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
