package org.vestibule.jpeg;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;

/**
 * Takes everything but the picture out of a sequential file by copying its coded bytes as they are,
 * at the speed of a copy.
 *
 * <p>Nothing is decoded: a damaged scan goes through unseen. What is to be kept is made by {@link
 * Transcoder}, which reads every code.
 */
public final class MetadataStrip {

  private MetadataStrip() {}

  /** Walks the segments and leaves the scans' data alone. */
  private static final class Walk extends PictureWalk {

    private @Nullable PlainScan plainScan;

    private Walk(byte[] bytes, JpegStructure structure) {
      super(bytes, structure);
    }

    @Override
    void scan(ScanHeader header, JpegSegment segment) throws JpegFault {
      plainScan = plainScan(header, segment);
    }
  }

  /** A bare baseline picture with the same coded bytes; what has none that can stay is refused. */
  public static Outcome<Transcoded> of(byte[] source) {
    try {
      return Outcome.done(of(source, PictureDecoder.structure(source)));
    } catch (JpegFault fault) {
      return fault.refusal();
    }
  }

  /** The same of a file that is built so. */
  static Transcoded of(byte[] source, JpegStructure structure) throws JpegFault {
    Transcoder.requireShown(structure.colourModel());
    Walk walk = new Walk(source, structure);
    walk.segments();
    walk.requireWhole();
    PlainScan plain = walk.plainScan;
    if (plain == null) {
      throw JpegFault.unsuited(
          "the picture's coded bytes can't be kept as they are", "transcode the picture");
    }
    List<int[]> quantisation = new ArrayList<>();
    for (int i = 0; i < structure.frame().components().size(); i++) {
      quantisation.add(walk.quantisation(i));
    }
    Layout layout = Layout.of(structure.frame(), TranscodePlan.AS_IS);
    byte[] bytes = plain.rewrapped(source, layout.frame(), quantisation);
    return new Transcoded(bytes, layout.effectiveCrop(), 0, 0);
  }
}
