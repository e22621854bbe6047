package org.vestibule.jpeg;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Walks a picture's segments in their order, keeps the tables in force and requires that scans
 * follow on one another (ITU-T T.81 B.2, G.1.1); what becomes of a scan's data is the subclass's
 * business.
 */
abstract class PictureWalk {

  private static final int MOST_BLOCKS_PER_UNIT = 10;

  final byte[] bytes;
  final JpegStructure structure;
  final JpegFrame frame;
  final DecodingTables tables;

  /** Each component's quantisation table in zigzag order, as it was when it was first coded. */
  final int[] @Nullable [] quantisation;

  private final boolean[] coded;
  private final Progression progression;
  private boolean frameSeen;

  PictureWalk(byte[] bytes, JpegStructure structure) {
    this.bytes = bytes;
    this.structure = structure;
    this.frame = structure.frame();
    this.tables = new DecodingTables(bytes);
    this.coded = new boolean[frame.components().size()];
    this.quantisation = new int[coded.length][];
    this.progression = new Progression(coded.length);
  }

  /** Reads a scan's data, which starts after its header. */
  abstract void scan(ScanHeader header, JpegSegment segment) throws JpegFault;

  /** Walks all segments. */
  final void segments() throws JpegFault {
    for (JpegSegment segment : structure.segments()) {
      if (Markers.isFrame(segment.marker())) {
        if (frameSeen) {
          throw JpegFault.damaged("a second frame header, " + segment.place());
        }
        frameSeen = true;
      } else if (segment.marker() == Markers.SOS) {
        scan(segment);
      } else if (segment.marker() == Markers.DNL) {
        lines(segment);
      } else if (segment.marker() == Markers.DHP || segment.marker() == Markers.EXP) {
        throw JpegFault.unsuited(
            "the picture is hierarchical (" + segment.place() + ")",
            "export the photo again as an ordinary JPEG");
      } else {
        tables.take(segment);
      }
    }
  }

  /**
   * Requires that nothing of the picture is missing.
   *
   * @return true if every bit of every coefficient was coded
   */
  final boolean requireWhole() throws JpegFault {
    if (!structure.progressive()) {
      for (int i = 0; i < coded.length; i++) {
        if (!coded[i]) {
          throw JpegFault.damaged("component " + (i + 1) + " of the picture is missing");
        }
      }
      return true;
    }
    if (!progression.shown() || (structure.endMarkerMissing() && !progression.complete())) {
      throw JpegFault.damaged("the picture's data ends before all its scans are complete");
    }
    return progression.complete();
  }

  /** True if every component was met in a scan of a sequential picture. */
  final boolean allCoded() {
    for (boolean one : coded) {
      if (!one) {
        return false;
      }
    }
    return true;
  }

  /** A component's quantisation table; only after {@link #requireWhole}. */
  final int[] quantisation(int component) {
    int[] table = quantisation[component];
    if (table == null) {
      throw new IllegalStateException("component " + (component + 1) + " was not coded");
    }
    return table;
  }

  /** The scan's bytes as they can be kept, if it is the picture's only one in the frame's order. */
  final @Nullable PlainScan plainScan(ScanHeader header, JpegSegment segment) throws JpegFault {
    if (structure.progressive() || header.components().size() != coded.length) {
      return null;
    }
    List<HuffmanTable> dc = new ArrayList<>();
    List<HuffmanTable> ac = new ArrayList<>();
    for (int i = 0; i < header.components().size(); i++) {
      ScanHeader.Part part = header.components().get(i);
      if (part.index() != i) {
        return null;
      }
      dc.add(tables.dcTable(part.dcTable()));
      ac.add(tables.acTable(part.acTable()));
    }
    int to = segment.codedEnd();
    while (to > segment.dataEnd() && bytes[to - 1] == (byte) 0xFF) {
      to--;
    }
    PlainScan plain = new PlainScan(dc, ac, tables.restartInterval(), segment.dataEnd(), to);
    return plain.hasBaselineTables() ? plain : null;
  }

  private void scan(JpegSegment segment) throws JpegFault {
    if (!frameSeen) {
      throw JpegFault.damaged(segment.place() + " comes before the frame header");
    }
    ScanHeader header = ScanHeader.read(bytes, segment, frame);
    requireUnit(header, segment);
    for (ScanHeader.Part part : header.components()) {
      if (quantisation[part.index()] == null) {
        JpegComponent component = frame.components().get(part.index());
        quantisation[part.index()] = tables.quantisationTable(component.quantTable());
      }
    }
    if (structure.progressive()) {
      progression.scan(header, segment);
    } else {
      once(header);
    }
    scan(header, segment);
  }

  private void once(ScanHeader header) throws JpegFault {
    for (ScanHeader.Part part : header.components()) {
      if (coded[part.index()]) {
        throw JpegFault.damaged("component " + (part.index() + 1) + " is coded twice");
      }
      coded[part.index()] = true;
    }
  }

  private void lines(JpegSegment segment) throws JpegFault {
    int lines = segment.dataLength() == 2 ? Bytes.u16(bytes, segment.dataStart()) : 0;
    if (lines != frame.size().height()) {
      throw JpegFault.damaged(
          segment.place()
              + " says the picture is "
              + lines
              + " samples high, "
              + frame.size().height()
              + " were expected");
    }
  }

  private void requireUnit(ScanHeader header, JpegSegment segment) throws JpegFault {
    int blocks = 0;
    for (ScanHeader.Part part : header.components()) {
      JpegComponent component = frame.components().get(part.index());
      blocks += component.horizontal() * component.vertical();
    }
    if (header.interleaved() && blocks > MOST_BLOCKS_PER_UNIT) {
      throw JpegFault.damaged(
          segment.place()
              + " interleaves "
              + blocks
              + " blocks, at most "
              + MOST_BLOCKS_PER_UNIT
              + " are allowed");
    }
  }
}
