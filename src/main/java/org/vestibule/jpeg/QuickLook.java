package org.vestibule.jpeg;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Turn;

/**
 * A first look at a large sequential picture, which keeps nothing of a block but what is asked for.
 * It reads in the proof's way, so that a picture that will be turned can be weighed for its proof
 * at the same time.
 */
final class QuickLook {

  /** Bytes for a block: samples at 1/8, at 1/4 and shown, and the preview's. */
  private static final int BLOCK_BYTES = 16;

  private final byte[] bytes;
  private final JpegStructure structure;
  private final FactsCounter facts;
  private final @Nullable BlockWeights weights;
  private final List<PlaneWeigher> weighers = new ArrayList<>();
  private final @Nullable ReducedPlane[] planes;
  private @Nullable PlainScan plainScan;

  private QuickLook(byte[] bytes, JpegStructure structure, boolean weighs) {
    this.bytes = bytes;
    this.structure = structure;
    this.weights = weighs ? new BlockWeights(Turn.NONE) : null;
    JpegFrame frame = structure.frame();
    this.facts = new FactsCounter(frame, frame.components().get(0));
    this.planes = new ReducedPlane[frame.components().size()];
  }

  /** True for what can be looked at so, and be shown at this size by two samples to a block. */
  static boolean suits(JpegStructure structure, int previewSide) {
    JpegFrame frame = structure.frame();
    if (structure.progressive()
        || !Preview.canShow(structure)
        || Preview.eighths(frame, previewSide) != 1) {
      return false;
    }
    boolean first = true;
    for (JpegComponent component : frame.components()) {
      PreviewScale scale = PreviewScale.of(frame, component, 1);
      if (scale.across() > (first ? 1 : 2) || scale.down() > (first ? 1 : 2)) {
        return false;
      }
      first = false;
    }
    return true;
  }

  /** The memory that a look takes. */
  static long bytes(JpegFrame frame) {
    return MemoryNeed.blocks(frame) * BLOCK_BYTES;
  }

  /**
   * Reads all codes; whatever is damaged, odd or unsuited is thrown as a fault.
   *
   * @param weighs true if the picture is to be weighed
   */
  static QuickLook read(byte[] bytes, JpegStructure structure, boolean weighs) throws JpegFault {
    QuickLook look = new QuickLook(bytes, structure, weighs);
    look.plainScan = ValueScan.read(bytes, structure, look::plane).plainScan();
    ReducedPlane brightness = look.reduced(0);
    look.facts.patches(brightness.samples, brightness.stride);
    return look;
  }

  /** Lays out a component's plane, once its quantisation is known. */
  private PlaneReading plane(int index, int[] quantisation) {
    JpegFrame frame = structure.frame();
    BlockGrid grid = BlockGrid.of(frame, frame.components().get(index));
    PreviewScale scale = PreviewScale.of(frame, frame.components().get(index), 1);
    ReducedPlane reduced =
        index == 0
            ? new ReducedPlane(grid, quantisation, 2, 2, facts)
            : new ReducedPlane(grid, quantisation, scale.across(), scale.down(), null);
    planes[index] = reduced;
    PlaneWeigher weigher = null;
    if (weights != null) {
      weigher = PlaneWeigher.ofSource(weights, index, grid);
      weighers.add(weigher);
    }
    return new PlaneReading(grid, reduced, weigher);
  }

  JpegStructure structure() {
    return structure;
  }

  PictureFacts facts() {
    return facts.facts();
  }

  @Nullable PlainScan plainScan() {
    return plainScan;
  }

  /** What the picture weighs; null if it was not weighed. */
  @Nullable PictureWeight weight() {
    return weights == null ? null : PictureWeight.of(bytes, weighers);
  }

  /** The brightness at a quarter. */
  GrayRaster quarter() {
    ReducedPlane plane = reduced(0);
    return GrayRaster.owning(plane.stride, plane.samples.length / plane.stride, plane.samples);
  }

  /** The brightness at an eighth: the DC coefficients. */
  GrayRaster eighth() {
    ReducedPlane plane = reduced(0);
    return GrayRaster.owning(plane.grid.wide(), plane.grid.high(), plane.means);
  }

  /** The picture for the eye. */
  Raster preview(int maxSide) {
    List<PreviewPlane> shown = new ArrayList<>();
    for (int i = 0; i < planes.length; i++) {
      shown.add(i == 0 ? PreviewPlane.of(eighth()) : PreviewPlane.of(reduced(i)));
    }
    return Preview.of(structure, shown, maxSide);
  }

  private ReducedPlane reduced(int component) {
    ReducedPlane reduced = planes[component];
    if (reduced == null) {
      throw new IllegalStateException("component " + (component + 1) + " was not read");
    }
    return reduced;
  }
}
