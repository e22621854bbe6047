package org.vestibule.jpeg;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;

/**
 * How a JPEG file is built: its first picture's segments and frame, what they carry, and what
 * stands after the picture (ITU-T T.81 Annex B). Nothing is decoded; a sound structure may still
 * hold a damaged scan.
 *
 * @param frame the frame header
 * @param segments the first picture's segments in file order, without SOI, EOI and restart markers
 * @param iccProfile the embedded profile, or null if there is none that is whole
 * @param adobeTransform colour transform of an Adobe APP14 segment, or null
 * @param colourModel what the components stand for
 * @param embedded what the APPn and COM segments carry
 * @param pictureEndBytes offset just past the first picture's EOI, or where it breaks off
 * @param endMarkerMissing true if the first picture has no EOI: it may be cut short
 * @param trailing what stands after the first picture
 * @param warnings recoverable oddities
 */
public record JpegStructure(
    JpegFrame frame,
    List<JpegSegment> segments,
    @Nullable IccProfile iccProfile,
    @Nullable Integer adobeTransform,
    ColourModel colourModel,
    Set<Embedded> embedded,
    long pictureEndBytes,
    boolean endMarkerMissing,
    List<Trailing> trailing,
    List<String> warnings) {

  private static final int R = 'R';
  private static final int G = 'G';
  private static final int B = 'B';

  public JpegStructure {
    segments = List.copyOf(segments);
    embedded = Set.copyOf(embedded);
    trailing = List.copyOf(trailing);
    warnings = List.copyOf(warnings);
  }

  /** Reads the structure of a file; what is not a JPEG, or breaks off too early, is refused. */
  public static Outcome<JpegStructure> read(byte[] bytes) {
    try {
      return Outcome.done(readOrFail(bytes));
    } catch (JpegFault fault) {
      return fault.refusal();
    }
  }

  /** True if the picture or what surrounds it carries this. */
  public boolean has(Embedded what) {
    return embedded.contains(what);
  }

  /** True if something of this kind stands after the first picture. */
  public boolean isFollowedBy(Trailing.Kind kind) {
    return trailing.stream().anyMatch(part -> part.kind() == kind);
  }

  /** True for a progressive picture. */
  public boolean progressive() {
    return frame.process() == CodingProcess.PROGRESSIVE;
  }

  /** The number of scans. */
  public int scans() {
    return (int) segments.stream().filter(segment -> segment.marker() == Markers.SOS).count();
  }

  /** The same file as if its picture ended sooner. */
  JpegStructure cutTo(int height) {
    FrameSize size = new FrameSize(frame.size().width(), height);
    return new JpegStructure(
        new JpegFrame(frame.process(), frame.precisionBits(), size, frame.components()),
        segments,
        iccProfile,
        adobeTransform,
        colourModel,
        embedded,
        pictureEndBytes,
        endMarkerMissing,
        trailing,
        warnings);
  }

  /** Entropy-coded bytes of all scans. */
  long codedBytes() {
    return segments.stream().mapToLong(JpegSegment::codedBytes).sum();
  }

  static JpegStructure readOrFail(byte[] bytes) throws JpegFault {
    requireStart(bytes);
    SegmentWalker walk = SegmentWalker.walk(bytes, 0);
    JpegFault fault = walk.fault();
    if (fault != null) {
      throw fault;
    }
    List<JpegSegment> segments = walk.segments();
    List<String> warnings = new ArrayList<>(walk.warnings());
    JpegFrame frame = FrameHeader.read(bytes, segments);
    if (!walk.scanSeen()) {
      throw JpegFault.damaged("the file ends before the picture's data (no SOS segment)");
    }
    EmbeddedReader embedded = EmbeddedReader.read(bytes, segments);
    IccProfile profile = IccChunks.read(bytes, segments, warnings);
    return new JpegStructure(
        frame,
        segments,
        profile,
        embedded.adobeTransform(),
        colourModel(frame, embedded.found(), embedded.adobeTransform()),
        embedded.found().isEmpty() ? Set.of() : EnumSet.copyOf(embedded.found()),
        walk.end(),
        walk.endMarkerMissing(),
        TrailingReader.read(bytes, walk.end()),
        warnings);
  }

  private static void requireStart(byte[] bytes) throws JpegFault {
    if (bytes.length == 0) {
      throw JpegFault.damaged("the file is empty (0 bytes)");
    }
    if (bytes.length < 2 || Bytes.u16(bytes, 0) != 0xFFD8) {
      throw JpegFault.unsuited(
          String.format(
              Locale.ROOT,
              "the file starts with %02X%s, a JPEG starts with FF D8",
              Bytes.u8(bytes, 0),
              bytes.length < 2 ? "" : String.format(Locale.ROOT, " %02X", Bytes.u8(bytes, 1))),
          "export the photo as JPEG from the phone, or leave it out");
    }
  }

  /**
   * The colour model by the rule that common decoders follow (JFIF, Adobe APP14, then component
   * ids; from memory, checked against an independent decoder).
   */
  private static ColourModel colourModel(
      JpegFrame frame, Set<Embedded> embedded, @Nullable Integer adobeTransform) {
    List<JpegComponent> components = frame.components();
    return switch (components.size()) {
      case 1 -> ColourModel.GRAY;
      case 3 -> {
        if (embedded.contains(Embedded.JFIF)) {
          yield ColourModel.YCBCR;
        }
        if (adobeTransform != null) {
          yield adobeTransform == 0 ? ColourModel.RGB : ColourModel.YCBCR;
        }
        boolean namedRgb =
            components.get(0).id() == R
                && components.get(1).id() == G
                && components.get(2).id() == B;
        yield namedRgb ? ColourModel.RGB : ColourModel.YCBCR;
      }
      case 4 -> adobeTransform == null || adobeTransform == 0 ? ColourModel.CMYK : ColourModel.YCCK;
      default -> ColourModel.UNKNOWN;
    };
  }
}
