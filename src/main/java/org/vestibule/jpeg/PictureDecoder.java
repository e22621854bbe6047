package org.vestibule.jpeg;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Decodes the first picture of a file to its quantised coefficients the plain way: bit by bit from
 * the file, block by block into place, by the flow charts of ITU-T T.81 F.2 and G.2. Slower than
 * {@link TokenDecoder} and sharing none of its code below the segments: the proof uses this one.
 */
final class PictureDecoder extends PictureWalk {

  private final List<ComponentBlocks> components = new ArrayList<>();
  private final List<String> warnings;

  /** Where rows of blocks go as they are complete, or null to keep them all. */
  private final @Nullable RowSink sink;

  private PictureDecoder(byte[] bytes, JpegStructure structure, @Nullable RowSink sink) {
    super(bytes, structure);
    this.sink = sink;
    this.warnings = new ArrayList<>(structure.warnings());
    for (JpegComponent component : frame.components()) {
      components.add(
          sink == null
              ? new ComponentBlocks(frame, component)
              : ComponentBlocks.strip(frame, component));
    }
  }

  /** Decodes; whatever is damaged, cut short or unsuited is thrown as a fault. */
  static Coefficients decode(byte[] bytes) throws JpegFault {
    JpegStructure structure = structure(bytes);
    return MemoryBudget.shared()
        .within(MemoryNeed.coefficients(structure.frame()), () -> decode(bytes, structure));
  }

  /** The structure of a picture whose kind and size are taken. */
  static JpegStructure structure(byte[] bytes) throws JpegFault {
    JpegStructure structure = JpegStructure.readOrFail(bytes);
    PictureLimits.check(structure);
    return structure;
  }

  /** Decodes a picture whose kind and size were checked, in memory that was admitted. */
  static Coefficients decode(byte[] bytes, JpegStructure structure) throws JpegFault {
    return new PictureDecoder(bytes, structure, null).decoded();
  }

  /** Decodes a sequential picture row by row; what is returned has its tables but no values. */
  static Coefficients stream(byte[] bytes, JpegStructure structure, RowSink sink) throws JpegFault {
    if (structure.progressive()) {
      throw new IllegalArgumentException("a progressive picture has no rows until its last scan");
    }
    return new PictureDecoder(bytes, structure, sink).decoded();
  }

  private Coefficients decoded() throws JpegFault {
    segments();
    if (!requireWhole()) {
      warnings.add("the picture's scans end before its finest detail");
    }
    for (int i = 0; i < components.size(); i++) {
      components.get(i).quantisation = quantisation(i);
    }
    return new Coefficients(structure, components, warnings);
  }

  @Override
  void scan(ScanHeader header, JpegSegment segment) throws JpegFault {
    BlockDecoder blocks = structure.progressive() ? progressive(header) : sequential(header);
    BitReader in = new BitReader(bytes, segment.dataEnd(), segment.codedEnd());
    ScanReader reader =
        new ScanReader(frame, header, components, blocks, in, tables.restartInterval(), sink);
    if (!isTidy(reader)) {
      warnings.add("stray bytes in the data of the scan that starts with " + segment.place());
    }
  }

  /** What was decoded before a fault is sound if no scan comes after. */
  private boolean isTidy(ScanReader reader) throws JpegFault {
    try {
      return reader.read();
    } catch (JpegFault fault) {
      if (structure.progressive()) {
        throw fault;
      }
      int height = frame.size().height();
      int sound = allCoded() ? Math.min(height, reader.wholeRows() * reader.rowHeight()) : 0;
      throw fault.withSoundRows(sound, height);
    }
  }

  private BlockDecoder sequential(ScanHeader header) throws JpegFault {
    int count = header.components().size();
    HuffmanTable[] dc = new HuffmanTable[count];
    HuffmanTable[] ac = new HuffmanTable[count];
    for (int i = 0; i < count; i++) {
      ScanHeader.Part part = header.components().get(i);
      dc[i] = tables.dcTable(part.dcTable());
      ac[i] = tables.acTable(part.acTable());
    }
    return new SequentialBlocks(dc, ac);
  }

  private BlockDecoder progressive(ScanHeader header) throws JpegFault {
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
}
