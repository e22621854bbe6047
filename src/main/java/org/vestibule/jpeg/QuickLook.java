package org.vestibule.jpeg;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A first look at a large sequential picture, whose tokens are forgotten as they are read. */
final class QuickLook {

  /** Bytes for a block: its DC coefficient, its place, and samples at 1/8, at 1/4 and shown. */
  private static final int BLOCK_BYTES = 16;

  private final TokenPicture picture;
  private final FactsCounter facts;

  private QuickLook(TokenPicture picture) {
    this.picture = picture;
    JpegFrame frame = picture.structure.frame();
    this.facts = new FactsCounter(frame, frame.components().get(0));
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

  /** Reads all codes; whatever is damaged, odd or unsuited is thrown as a fault. */
  static QuickLook read(byte[] bytes, JpegStructure structure) throws JpegFault {
    QuickLook look = new QuickLook(new TokenPicture(structure, false, Tokens.forgetting()));
    TokenDecoder.look(bytes, look.picture, look::plane);
    return look;
  }

  /** Lays out a component's plane, once its quantisation is known. */
  private void plane(int index, int[] quantisation) {
    TokenPlane plane = picture.planes.get(index);
    PreviewScale scale = PreviewScale.of(picture.structure.frame(), plane.component, 1);
    ReducedPlane reduced =
        index == 0
            ? new ReducedPlane(plane.grid, quantisation, 2, 2, facts)
            : new ReducedPlane(plane.grid, quantisation, scale.across(), scale.down(), null);
    plane.reduced = reduced;
  }

  JpegStructure structure() {
    return picture.structure;
  }

  PictureFacts facts() {
    return facts.facts();
  }

  @Nullable PlainScan plainScan() {
    return picture.plainScan;
  }

  /** The brightness at a quarter. */
  GrayRaster quarter() {
    ReducedPlane plane = reduced(0);
    return GrayRaster.owning(plane.stride, plane.samples.length / plane.stride, plane.samples);
  }

  /** The brightness at an eighth: the DC coefficients. */
  GrayRaster eighth() {
    TokenPlane plane = picture.planes.get(0);
    byte[] samples = new byte[plane.dc.length];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = ReducedPlane.sample(plane.dc[i] * plane.quantisation[0] + 4);
    }
    return GrayRaster.owning(plane.grid.wide(), plane.grid.high(), samples);
  }

  /** The picture for the eye. */
  Raster preview(int maxSide) {
    List<PreviewPlane> shown = new ArrayList<>();
    for (int i = 0; i < picture.planes.size(); i++) {
      shown.add(i == 0 ? PreviewPlane.of(eighth()) : PreviewPlane.of(reduced(i)));
    }
    return Preview.of(picture.structure, shown, maxSide);
  }

  private ReducedPlane reduced(int component) {
    ReducedPlane reduced = picture.planes.get(component).reduced;
    if (reduced == null) {
      throw new IllegalStateException("component " + (component + 1) + " was not read");
    }
    return reduced;
  }
}
