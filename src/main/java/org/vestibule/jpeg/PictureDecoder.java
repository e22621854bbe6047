package org.vestibule.jpeg;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Decodes the first picture of a file to its quantised coefficients, segment by segment. */
final class PictureDecoder {

  private static final int MOST_BLOCKS_PER_UNIT = 10;

  private final byte[] bytes;
  private final JpegStructure structure;
  private final JpegFrame frame;
  private final DecodingTables tables;
  private final List<ComponentBlocks> components = new ArrayList<>();
  private final boolean[] coded;
  private final Progression progression;
  private final List<String> warnings;
  private boolean frameSeen;
  private @Nullable PlainScan plainScan;

  private PictureDecoder(byte[] bytes, JpegStructure structure) {
    this.bytes = bytes;
    this.structure = structure;
    this.frame = structure.frame();
    this.tables = new DecodingTables(bytes);
    this.coded = new boolean[frame.components().size()];
    this.progression = new Progression(coded.length);
    this.warnings = new ArrayList<>(structure.warnings());
  }

  /** Decodes; whatever is damaged, cut short or unsuited is thrown as a fault. */
  static Coefficients decode(byte[] bytes) throws JpegFault {
    JpegStructure structure = JpegStructure.readOrFail(bytes);
    PictureLimits.check(structure);
    PictureDecoder decoder = new PictureDecoder(bytes, structure);
    decoder.segments();
    decoder.requireWhole();
    return new Coefficients(structure, decoder.components, decoder.plainScan, decoder.warnings);
  }

  private void segments() throws JpegFault {
    for (JpegSegment segment : structure.segments()) {
      if (Markers.isFrame(segment.marker())) {
        frame(segment);
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

  private void frame(JpegSegment segment) throws JpegFault {
    if (frameSeen) {
      throw JpegFault.damaged("a second frame header, " + segment.place());
    }
    frameSeen = true;
    for (JpegComponent component : frame.components()) {
      components.add(new ComponentBlocks(frame, component));
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

  private void scan(JpegSegment segment) throws JpegFault {
    if (!frameSeen) {
      throw JpegFault.damaged(segment.place() + " comes before the frame header");
    }
    ScanHeader header = ScanHeader.read(bytes, segment, frame);
    requireUnit(header, segment);
    for (ScanHeader.Part part : header.components()) {
      ComponentBlocks blocks = components.get(part.index());
      if (blocks.quantisation.length == 0) {
        blocks.quantisation = tables.quantisationTable(blocks.component.quantTable());
      }
    }
    BlockDecoder blocks =
        structure.progressive() ? progressive(header, segment) : sequential(header);
    BitReader in = new BitReader(bytes, segment.dataEnd(), segment.codedEnd());
    ScanReader reader =
        new ScanReader(frame, header, components, blocks, in, tables.restartInterval());
    if (!reader.read()) {
      plainScan = null;
      warnings.add("stray bytes in the data of the scan that starts with " + segment.place());
    } else if (!structure.progressive()) {
      notePlain(header, segment);
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

  private BlockDecoder sequential(ScanHeader header) throws JpegFault {
    int count = header.components().size();
    HuffmanTable[] dc = new HuffmanTable[count];
    HuffmanTable[] ac = new HuffmanTable[count];
    for (int i = 0; i < count; i++) {
      ScanHeader.Part part = header.components().get(i);
      if (coded[part.index()]) {
        throw JpegFault.damaged("component " + (part.index() + 1) + " is coded twice");
      }
      coded[part.index()] = true;
      dc[i] = tables.dcTable(part.dcTable());
      ac[i] = tables.acTable(part.acTable());
    }
    return new SequentialBlocks(dc, ac);
  }

  private BlockDecoder progressive(ScanHeader header, JpegSegment segment) throws JpegFault {
    progression.scan(header, segment);
    List<HuffmanTable> needed = new ArrayList<>();
    for (ScanHeader.Part part : header.components()) {
      if (header.spectralStart() > 0) {
        needed.add(tables.acTable(part.acTable()));
      } else if (header.high() == 0) {
        needed.add(tables.dcTable(part.dcTable()));
      }
    }
    return new ProgressiveBlocks(header, needed.toArray(new HuffmanTable[0]));
  }

  /** Remembers the scan if it is the picture's only one and in the frame's order. */
  private void notePlain(ScanHeader header, JpegSegment segment) throws JpegFault {
    List<HuffmanTable> dc = new ArrayList<>();
    List<HuffmanTable> ac = new ArrayList<>();
    for (int i = 0; i < header.components().size(); i++) {
      ScanHeader.Part part = header.components().get(i);
      if (part.index() != i) {
        return;
      }
      dc.add(tables.dcTable(part.dcTable()));
      ac.add(tables.acTable(part.acTable()));
    }
    if (dc.size() == components.size()) {
      int to = segment.codedEnd();
      while (to > segment.dataEnd() && bytes[to - 1] == (byte) 0xFF) {
        to--;
      }
      plainScan = new PlainScan(dc, ac, tables.restartInterval(), segment.dataEnd(), to);
    }
  }

  private void requireWhole() throws JpegFault {
    if (!structure.progressive()) {
      for (int i = 0; i < coded.length; i++) {
        if (!coded[i]) {
          throw JpegFault.damaged("component " + (i + 1) + " of the picture is missing");
        }
      }
    } else if (!progression.shown() || (structure.endMarkerMissing() && !progression.complete())) {
      throw JpegFault.damaged("the picture's data ends before all its scans are complete");
    } else if (!progression.complete()) {
      warnings.add("the picture's scans end before its finest detail");
    }
  }
}
