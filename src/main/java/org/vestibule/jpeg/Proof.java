package org.vestibule.jpeg;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;

/**
 * Proves that a result holds exactly the source's coefficients, turned and cropped.
 *
 * <p>This is the plain statement of what a turn is, kept apart from the engine that does it: every
 * displayed block is traced back to its stored block by the samples it covers, and every
 * coefficient by its frequencies. Source and result are decoded by decoders that share nothing with
 * the engine below the marker segments: first by {@link ValueScan}, and what they weigh is compared
 * ({@link WeighedProof}); where that does not settle it, by {@link PictureDecoder}, block by block.
 * A picture that is neither turned nor cropped and whose tables and coded bytes are the source's,
 * byte for byte, needs no decoding: it is the source's picture, sound or not ({@link CodedScan}).
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
      difference = frames.quantisation(source.quantisation(), result.quantisation());
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
    return of(source, plan, result, null);
  }

  /**
   * The same; a source that was weighed before is not decoded again.
   *
   * @param known what the very same bytes weigh; null if that is not known
   */
  public static Outcome<Proved> of(
      byte[] source, TranscodePlan plan, byte[] result, @Nullable PictureWeight known) {
    try {
      JpegStructure from = PictureDecoder.structure(source);
      CropBox kept = ExpectedPart.of(from.frame(), plan);
      if (kept != null) {
        JpegStructure to = PictureDecoder.structure(result);
        ProofFrame frames = new ProofFrame(from, plan.turn(), kept, to);
        if (foreign(to) == null
            && frames.difference() == null
            && (hasSameCodes(source, from, plan, result, to)
                || weighsTheSame(source, from, plan, frames, result, to, known))) {
          return Outcome.done(new Proved(frames.blocks(), kept));
        }
      }
    } catch (JpegFault fault) {
      // What is odd or damaged is read again the plain way, which finds the words for it.
    }
    return inFull(source, plan, result, false);
  }

  /** The proof by tables and coded bytes; false alone proves nothing. */
  private static boolean hasSameCodes(
      byte[] source, JpegStructure from, TranscodePlan plan, byte[] result, JpegStructure to) {
    if (plan.turn() != Turn.NONE || plan.crop() != null) {
      return false;
    }
    CodedScan wanted = CodedScan.of(source, from);
    CodedScan found = wanted == null ? null : CodedScan.of(result, to);
    return wanted != null && found != null && wanted.isSameAs(found);
  }

  private static boolean weighsTheSame(
      byte[] source,
      JpegStructure from,
      TranscodePlan plan,
      ProofFrame frames,
      byte[] result,
      JpegStructure to,
      @Nullable PictureWeight known) {
    return !from.progressive()
        && new WeighedProof(source, from, plan.turn(), frames).holds(result, to, known);
  }

  /**
   * Decodes both files and compares block by block: the plain statement, which also says what
   * differs.
   *
   * @param huge true to compare as for a picture too large for all of its coefficients
   */
  static Outcome<Proved> inFull(byte[] source, TranscodePlan plan, byte[] result, boolean huge) {
    try {
      JpegStructure from = PictureDecoder.structure(source);
      CropBox kept = ExpectedPart.of(from.frame(), plan);
      if (kept == null) {
        return nothingKept();
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

  private static Outcome<Proved> compare(
      byte[] source,
      JpegStructure from,
      boolean dense,
      TranscodePlan plan,
      CropBox kept,
      byte[] result)
      throws JpegFault {
    ProofBlocks blocks;
    List<int[]> sourceTables;
    if (dense) {
      Coefficients all = PictureDecoder.decode(source, from);
      blocks = new DenseProofBlocks(all, plan.turn());
      sourceTables = all.quantisation();
    } else {
      DigestProofBlocks digests = new DigestProofBlocks(from.frame(), plan.turn());
      sourceTables = PictureDecoder.stream(source, from, digests).quantisation();
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
        difference = frames.quantisation(sourceTables, read.quantisation());
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
