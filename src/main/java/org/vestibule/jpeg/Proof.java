package org.vestibule.jpeg;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;

/**
 * Proves that a result holds exactly the source's coefficients, turned and cropped.
 *
 * <p>This is the slow, plain statement of what a turn is, kept apart from the engine that does it:
 * source and result are decoded by {@link PictureDecoder}, which shares nothing with the engine
 * below the marker segments, every displayed block is traced back to its stored block by the
 * samples it covers, and every coefficient by its frequencies. A picture that is neither turned nor
 * cropped and whose tables and coded bytes are the source's, byte for byte, needs no decoding: it
 * is the source's picture, sound or not ({@link CodedScan}).
 */
public final class Proof {

  private static final String ADVICE =
      "don't file the result; keep the source file and report this as a fault of the program";

  /** The share of the memory budget that the coefficients of a source may take, as a divisor. */
  private static final int DENSE_SHARE = 2;

  /**
   * What was compared.
   *
   * @param blocks blocks of all components
   * @param kept the part of the displayed picture that the result holds
   */
  public record Proved(long blocks, CropBox kept) {}

  private Proof() {}

  /** Compares frame, quantisation and every coefficient through turn, crop and trimming. */
  public static Outcome<Proved> same(Coefficients source, TranscodePlan plan, Coefficients result) {
    CropBox kept = ExpectedPart.of(source.frame(), plan);
    if (kept == null) {
      return nothingKept();
    }
    ProofFrame frames = new ProofFrame(source.structure(), plan.turn(), kept, result.structure());
    String difference = frames.difference();
    if (difference == null) {
      difference = frames.quantisation(source.components(), result.components());
    }
    if (difference == null) {
      ProofRows rows = new ProofRows(new DenseProofBlocks(source, plan.turn()), frames);
      for (int component = 0; component < result.componentCount(); component++) {
        for (int row = 0; row < result.blocksHigh(component); row++) {
          rows.row(component, row, result.components().get(component));
        }
      }
      difference = rows.difference();
    }
    return difference == null
        ? Outcome.done(new Proved(frames.blocks(), kept))
        : differs(difference);
  }

  /** Decodes both files, requires the result to be bare baseline, and compares. */
  public static Outcome<Proved> of(byte[] source, TranscodePlan plan, byte[] result) {
    return of(source, plan, result, false);
  }

  /**
   * The same, if need be as for a picture too large for all of its coefficients.
   *
   * @param huge true to compare digests whatever the size
   */
  static Outcome<Proved> of(byte[] source, TranscodePlan plan, byte[] result, boolean huge) {
    try {
      JpegStructure from = PictureDecoder.structure(source);
      CropBox kept = ExpectedPart.of(from.frame(), plan);
      if (kept == null) {
        return nothingKept();
      }
      if (plan.turn() == Turn.NONE && plan.crop() == null) {
        Proved coded = ofCodedBytes(source, from, kept, result);
        if (coded != null) {
          return Outcome.done(coded);
        }
      }
      long need = MemoryNeed.coefficients(from.frame());
      MemoryBudget budget = MemoryBudget.shared();
      boolean dense =
          from.progressive() || (!huge && budget.fits(Math.multiplyExact(DENSE_SHARE, need)));
      return budget.within(
          dense ? need : DigestProofBlocks.bytes(from.frame()),
          () -> compare(source, from, dense, plan, kept, result));
    } catch (JpegFault fault) {
      return fault.refusal();
    }
  }

  /** The proof by tables and coded bytes; null if they differ, which alone proves nothing. */
  private static @Nullable Proved ofCodedBytes(
      byte[] source, JpegStructure from, CropBox kept, byte[] result) throws JpegFault {
    CodedScan wanted = CodedScan.of(source, from);
    if (wanted == null) {
      return null;
    }
    JpegStructure to = PictureDecoder.structure(result);
    CodedScan found = CodedScan.of(result, to);
    ProofFrame frames = new ProofFrame(from, Turn.NONE, kept, to);
    return found != null
            && foreign(to) == null
            && frames.difference() == null
            && wanted.isSameAs(found)
        ? new Proved(frames.blocks(), kept)
        : null;
  }

  private static Outcome<Proved> compare(
      byte[] source,
      JpegStructure from,
      boolean dense,
      TranscodePlan plan,
      CropBox kept,
      byte[] result)
      throws JpegFault {
    ProofBlocks blocks;
    List<ComponentBlocks> sourceTables;
    if (dense) {
      Coefficients all = PictureDecoder.decode(source, from);
      blocks = new DenseProofBlocks(all, plan.turn());
      sourceTables = all.components();
    } else {
      DigestProofBlocks digests = new DigestProofBlocks(from.frame(), plan.turn());
      sourceTables = PictureDecoder.stream(source, from, digests).components();
      blocks = digests;
    }
    JpegStructure to = PictureDecoder.structure(result);
    String difference = foreign(to);
    ProofFrame frames = new ProofFrame(from, plan.turn(), kept, to);
    if (difference == null) {
      difference = frames.difference();
    }
    if (difference == null) {
      ProofRows rows = new ProofRows(blocks, frames);
      Coefficients read = PictureDecoder.stream(result, to, rows);
      difference = read.warnings().isEmpty() ? null : read.warnings().get(0);
      if (difference == null) {
        difference = frames.quantisation(sourceTables, read.components());
      }
      if (difference == null) {
        difference = rows.difference();
      }
    }
    return difference == null
        ? Outcome.done(new Proved(frames.blocks(), kept))
        : differs(difference);
  }

  private static Outcome<Proved> nothingKept() {
    return differs("nothing of the picture could be kept by this plan");
  }

  private static Outcome<Proved> differs(String what) {
    return Outcome.refused("the result is not the source's picture: " + what, ADVICE);
  }

  /** What the result holds beyond a bare baseline picture, or null. */
  private static @Nullable String foreign(JpegStructure structure) {
    if (structure.frame().process() != CodingProcess.BASELINE) {
      return "it is " + structure.frame().process().words();
    }
    if (!structure.embedded().isEmpty()) {
      return "it still carries " + structure.embedded().iterator().next().words();
    }
    if (!structure.trailing().isEmpty() || structure.endMarkerMissing()) {
      return "it does not end with its picture";
    }
    return structure.warnings().isEmpty() ? null : structure.warnings().get(0);
  }
}
